"""Python's search for rubbish, put off while work goes on that leaves hardly any."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def collection_put_off() -> Iterator[None]:
    """While very many lasting objects are made, the search would go over them again and again in vain.

    It takes a quarter of the time of loading the lexicon, and a tenth of taking notes. What is no longer referred to
    is freed as ever; only circles of objects wait, and neither makes any to speak of.
    """
    running = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if running:
            gc.enable()
