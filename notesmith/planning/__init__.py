"""What comes before the recording: who tastes what in which order, under which codes, and how much of it is needed."""
