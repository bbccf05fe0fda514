"""One module a file format, each run in a child process with limits."""
