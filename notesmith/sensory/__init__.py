"""Arithmetic on plain numbers: what many tastings show, and what a cup costs."""
