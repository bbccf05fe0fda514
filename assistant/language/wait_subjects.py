"""Which kinds of wait a question is about: "how long for the caps to bleed off"."""

from __future__ import annotations

from assistant.language.claims import rx
from assistant.language.tokens import tokens

_TABLE: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"capacitors?|bleed(?: off| down)?|(?:dc )?bus|stored charge",
     ("capacitor_bleed",)),
    (r"defrost(?:s|ing|ed)?", ("defrost", "off_defrost")),
    (r"(?:shows?|display|displays|see|flash(?:es)?|gives?) (?:me |up )?(?:a |the |any "
     r")?(?:code|fault|error|lamp|light)|(?:code|fault|error) (?:shows?|comes?|"
     r"appears?|"
     r"is shown|to show|to come up)",
     ("display_delay", "detection_time")),
    (r"history|stored (?:faults?|codes?)", ("history_exit", "button")),
    (r"(?:leave|keep|stay|stays|be|power|breaker|it) off|off for|reset|resetting",
     ("power_off_hold", "reset_window", "reset_delay")),
    (r"(?:compressor|it|she|unit) (?:to )?(?:start|starts|kick in|kicks in|come on|run|"
     r"be running|running|fire up|go)|starts?(?: up)?|restart|running by now",
     ("start_delay", "minimum_off", "restart_delay", "startup_order", "preheat",
      "reset_delay", "standby", "value_and_time")),
    (r"retry|retries|try again|tries again|release|releases|unlocks?|locked out|"
     r"lock ?out",
     ("restart_delay", "soft_stop", "auto_release", "minimum_off")),
    (r"(?:at least|minimum|min) run|(?:has|have|got) to run|run for|keep running|"
     r"stops? again", ("minimum_run",)),
    (r"blower|indoor fan|inside fan", ("blower_delay", "run_on", "startup_order")),
    (r"pump(?:s|ing)?(?: down)?|drain(?:s|ing)?|purge", ("run_on",)),
    (r"cool(?:s)? (?:down|off)|ohm(?: it| out)?|overload|dome|protector",
     ("cooling", "self_reset")),
    (r"transformer", ("self_reset",)),
    (r"pre ?heat(?:ing)?|crankcase|warm(?:s|ing)? up", ("preheat",)),
    (r"button|hold|press", ("button",)),
    (r"ignores?|ignored|look(?:s|ed)? at", ("ignore_window", "detection_time")),
    (r"supply|voltage|standby", ("standby", "value_and_time")),
)  # fmt: skip
_SUBJECTS = tuple((rx(pattern), kinds) for pattern, kinds in _TABLE)


def wait_subjects(text: str) -> frozenset[str]:
    """Return the kinds of wait that a question names; none where it names no kind.

    Examples
    --------
    >>> sorted(wait_subjects("how long for the caps to bleed off"))
    ['capacitor_bleed']
    """
    folded = tokens(text).folded
    return frozenset(
        kind for pattern, kinds in _SUBJECTS if pattern.search(folded) for kind in kinds
    )
