"""Review: hear, check and correct the notes; corrections are kept beside the captions and applied on every run."""
