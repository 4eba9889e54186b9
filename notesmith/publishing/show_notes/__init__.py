"""Show notes: what the audience reads, every sentence with the time of the words that say it.

`contents.BLOCKS` is the list of what they hold, one file for each block: a function from the story of a recording to a
`Block` of lines, or None where there is nothing to say. A line is made of parts; a part that comes from records carries
them, and every form writes their times beside it. `render.py` holds the forms, `templates/` how they look, and
`cautions.toml` the words of all cautions.

To add a block, write its function in a file of its own and name it in `contents.BLOCKS`. To give a block a look of its
own, put a template of its name beside `block.j2`.
"""

from notesmith.publishing.show_notes.render import for_the_author, markdown, page, plain

__all__ = ["for_the_author", "markdown", "page", "plain"]
