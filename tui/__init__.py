"""What a person touches: the one command, plain lines, the screen."""
