"""`python -m notesmith` is the command `notesmith`."""

from notesmith.cli import main

if __name__ == "__main__":
    main()
