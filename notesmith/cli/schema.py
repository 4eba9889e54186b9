"""`notesmith schema`: the form of the notes, for other programs."""

from notesmith.cli.speaking import Force, Output, give


def schema(output: Output = None, force: Force = False) -> None:
    """Write the JSON Schema of the notes."""
    from notesmith.publishing import json_text

    give(json_text.schema(), output, force=force)
