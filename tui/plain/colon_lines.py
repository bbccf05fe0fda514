"""What a line that begins with a colon does in a conversation."""

from __future__ import annotations

COMMAND_HELP = """\
Say what you see, read or did, one line at a time. Lines that begin with a colon:
  :timers         the timers, with the time each is ready
  :now            the answer as it stands now
  :park [WHY]     set the job aside and leave
  :close OUTCOME  end the job with its outcome and leave
  :help           these lines
  :quit           leave; the job stays open (so does the end of input)"""
