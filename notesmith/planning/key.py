"""The sealed key: which code is which product; and the commitment by which it is proved that nobody changed it."""

import json
from hashlib import sha256
from pathlib import Path

from pydantic import Field

from notesmith.errors import SheetError
from notesmith.filled_in import Form, read_filled_in
from notesmith.records import Record, Sheet, SheetSample


class Key(Record):
    """What the tasters must not see until they have tasted."""

    salt: str = Field(description="Random signs, without which nobody can try out what the commitment stands for.")
    seed: str = Field(description="What the plan was drawn from: it draws the same plan again.")
    samples: tuple[SheetSample, ...] = Field(description="The samples by their codes, each with its product.")


KEY = Form(Key, {"samples": SheetSample}, called="the key", begun_with="notesmith plan draw")


def commitment(key: Key) -> str:
    """SHA-256 in hexadecimal over all the key says, as JSON in UTF-8 with sorted fields, without spaces.

    What the key does not say is left out, so that a field it might say one day changes no commitment of today.

    >>> commitment(Key(salt="s", seed="7", samples=(SheetSample(id="417", product="Hill oolong"),)))[:16]
    '5b6bb077614a2d89'
    """
    said = key.model_dump(mode="json", exclude_defaults=True)
    text = json.dumps(said, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    return sha256(text.encode()).hexdigest()


def read_key(path: Path) -> Key:
    """Read a sealed key.

    Raises:
        SheetError: it cannot be read, or is no key.
    """
    return read_filled_in(path, KEY)


def reveal(sheet: Sheet, key: Key) -> Sheet:
    """The sheet with its products filled in, once the key is proved to be the one that was sealed.

    Raises:
        SheetError: the sheet was never sealed, the key is not the one it was sealed with, or they do not fit together.
    """
    if sheet.commitment is None:
        raise SheetError("the sheet holds no commitment", mend="only what `notesmith plan draw` wrote can be revealed")
    if commitment(key) != sheet.commitment:
        raise SheetError("the key is not the one that was sealed", mend="look for the file that nobody has changed")
    known = {sample.id: sample for sample in key.samples}
    if set(known) != {sample.id for sample in sheet.samples}:
        raise SheetError("the samples of the sheet are not those of the key", mend="undo what was changed in the sheet")
    return sheet.model_copy(update={"samples": tuple(_filled(sample, known[sample.id]) for sample in sheet.samples)})


def _filled(sample: SheetSample, known: SheetSample) -> SheetSample:
    """The sample with all the key knows of it; what was written into the sheet since stays where the key is silent."""
    if sample.product not in (None, known.product):
        what = f"sample {sample.id} is `{sample.product}` in the sheet and `{known.product}` in the key"
        raise SheetError(what, mend="take it out of the sheet")
    told = known.model_dump(exclude={"id", "aliases"}, exclude_none=True)
    return sample.model_copy(update=told)
