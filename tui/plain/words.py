"""The words that stand for states, results and bases in plain lines."""

from __future__ import annotations

from assistant.dialogue.answer import Statement, Status

STATUS_WORDS: dict[Status, str] = {
    "stop": "STOP. Do this first.",
    "refused": "NO. Here is the safe way.",
    "unit_lockout": "LOCKED OUT. It will not start by itself.",
    "waiting": "WAIT. It is too early to judge.",
    "asking": "QUESTION. One thing is needed first.",
    "answered": "ANSWER.",
    "not_found": "NOT FOUND in this library.",
}
"""What each status says on its own line."""
STATUS_KINDS: dict[Status, str] = {
    "stop": "alarm",
    "refused": "alarm",
    "unit_lockout": "alarm",
    "waiting": "wait",
    "asking": "bold",
    "answered": "good",
    "not_found": "bold",
}
"""How a terminal with colours may set it off; the words alone suffice."""
NEEDS_WORDS = {
    "look": "look only, covers stay on",
    "power_off": "power off and proved dead, covers off",
    "live": "live measurement",
    "gauges": "gauges",
    "opens_circuit": "opens the refrigerant circuit",
    "swap": "swap of a part",
}
VERDICT_WORDS = {
    "pass": "PASS",
    "fail": "FAIL",
    "inconclusive": "TOO CLOSE TO CALL",
    "no_verdict": "NO VERDICT",
}
DECODE_WORDS = {
    "exact": "Decoded",
    "several": "Could be any of these",
    "none": "Not in this manual",
    "not_decodable": "Cannot tell yet",
}
RANK_WORDS = {
    "maker": "from the manual",
    "shop": "shop rule",
    "common": "common practice",
}


def basis_words(statement: Statement) -> str:
    """Say what a statement rests on."""
    if statement.basis == "computed":
        return "worked out"
    if statement.basis == "passage":
        return "from the page"
    ranks = [source.rank for source in statement.sources if source.rank]
    return RANK_WORDS.get(ranks[0], "rule") if ranks else "rule"
