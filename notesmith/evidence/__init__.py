"""What notes prove: recordings read as trials, rankings and profiles, and handed to the arithmetic of `sensory`."""
