"""Engineering checks: one function per physical law, with verdicts."""
