"""What the audience reads: one file for each form that notes are published in."""
