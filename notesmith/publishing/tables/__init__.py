"""The records as tables, for a spreadsheet or a statistics program.

Two tables, each written in several forms: `records.py` has one row a record, of every kind; `samples.py` one row a cup,
with a few columns for each term. `terms.py` has the latter turned round, in words, for people to read. A form is a
module that writes any `Table` of `model.py`.
"""
