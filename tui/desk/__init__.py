"""The screen: a conversation with its timers, causes, checks, sources and jobs."""
