"""The command line: one file for each group of commands, and no logic of its own."""


def main() -> None:
    """Run the command line."""
    from notesmith.cli.app import run

    run()
