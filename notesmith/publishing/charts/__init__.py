"""Charts of an episode, without a browser: as SVG for a page, as PNG to post, in words and as a table beside them."""
