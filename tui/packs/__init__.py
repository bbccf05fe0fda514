"""What `faultleaf rules` does beside proving: begin, show, draft, accept."""
