"""What a turn wants beside telling facts."""

from __future__ import annotations

import re

from assistant.facts import Act
from assistant.language.claims import Claim, rx
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary

_IT = (
    r"(?:it|this|that|she|the [a-z]+(?: [a-z]+)?|these|they|[0-9]+ [a-z]+|[a-z]?[0-9]+)"
)
_TABLE: tuple[tuple[Act, str], ...] = (
    ("undo",
     r"undo(?: that| it| last)?|take (?:that|it) back|forget (?:that|it|what i said|"
     r"the last)(?: one| bit| thing)?|delete (?:that|the last)(?: one)?|go back (?:one|"
     r"a step)?|never ?mind that(?: last)?(?: one)?|ignore (?:that|what i said|the "
     r"last)(?: one)?|strike that(?: one)?(?= |$)(?! (?:it|the|i))"),
    ("correct",
     r"no wait|scratch that|strike that|i (?:said|told you|meant|mean)(?: "
     r"[a-z0-9]+)?(?: before| earlier| actually)?(?= |$)|my bad|my mistake|correction|"
     r"(?:sorry )?(?:i )?meant(?! to)(?! [a-z]+ (?:out|at))|not the (?:indoor|outdoor|"
     r"inside|outside|other|red|green|amber|yellow|orange)|not [0-9]+ , [0-9]+|not "
     r"[a-z][0-9]+|oops|got (?:it|that) wrong|misread(?: it| that)?|i was wrong|"
     r"sorry(?= [a-z0-9]+ (?:, )?not )|not [0-9]+(?= [0-9])|hang on it|wait (?:no|it "
     r"is|it was|actually)|actually(?= |$)|make that|i take that back|let me "
     r"correct(?: that)?|miscounted|counted wrong|(?:that|those) (?:was|were) "
     r"(?:before|prior to) (?:the |i |we |my )?(?:reset|power cycle)|it (?:was|is) "
     r"[0-9.]+(?: [a-z]+)?(?: ,)? not [0-9.]+|it was [0-9]+ not "
     r"[0-9]+|[0-9]+ , not [0-9]+|[0-9]+ not [0-9]+|wrong (?:one|unit|board)|typo|"
     r"should (?:have been|be|read) [0-9.]+(?! (?:to|and|or))"),
    ("ask_page",
     r"(?:which|what) page(?: is (?:that|it|this))?(?: on)?|(?:where|what (?:book|"
     r"manual|document|doc))(?: does| do| did| is)? (?:it |that |you |this )?(?:say|"
     r"says|come from|from|written|get that|it from|that from|find that)(?: that| it| "
     r"from)?|show me (?:the )?(?:table|page|source|manual|chart|book|paragraph|"
     r"text)(?: you| it| that| where| this)*(?: got| is| comes| get)*(?: that| it)?(?: "
     r"from| in)?|page (?:number|no)|(?:what is|where is) your source|source for that|"
     r"where (?:did|do) you get (?:that|this|it)(?: from)?|says who|according to "
     r"(?:who|what)|pull up the page|read me the (?:page|text)|cite (?:it|that)|which "
     r"(?:manual|document|book)(?: is (?:that|it)(?: in| from)?)?|where is that "
     r"written"),
    ("ask_record",
     r"(?:write|print|get|have|give|show|make|save|export|send)(?: me| us| up)* (?:the "
     r"|a |my |this |that )*(?:job )?(?:notes?|record|report|summary|write ?up|hand "
     r"?over|job sheet)|(?:notes?|summary|report|record) (?:for|of) (?:the )?(?:next|"
     r"this|job|office|customer|today)(?: [a-z]+)?|summari[sz]e|recap|what (?:have|do) "
     r"we (?:have|know|got)(?: so far)?|what have i (?:told|said)(?: you)?(?: so far)?|"
     r"where are we(?: at| up to)?|hand ?over note"),
    ("ask_why",
     r"why(?: (?:is|would|does|do|did|not|are|should|the|in))?(?: (?:it|you|i|we|"
     r"that))?|how come|what for|what is the (?:reason|point)(?: of)?|what makes you "
     r"(?:say|think)|how do you (?:know|figure)|what is that based on|explain(?: that| "
     r"why| the)?|reason for"),
    ("ask_wait",
     r"how long(?: till| until| before| for| do| does| is| should| will| must| have| "
     r"has| can| to| now| left| more)*(?! (?:has it been|have you))|when (?:will|does|"
     r"should|can|would|is|do) (?:it|she|i|we|the [a-z]+|that|they)(?: be)?(?: "
     r"[a-z]+)?|should (?:it|she|the [a-z]+) be (?:running|on|going|started|up|cooling|"
     r"heating)(?: by now| yet| now)?|(?:do|must|should) (?:i|we) (?:got to |have to |"
     r"need to )?wait(?: [a-z]+)?|(?:still|is it still|is it) (?:waiting|in (?:its|a|"
     r"the) (?:delay|wait))|(?:time|minutes|min) (?:left|to go|remaining)|(?:is|are) "
     r"(?:it|the wait|they|time) (?:over|up|done) yet|has it been long enough|what is "
     r"the (?:delay|wait|timer)|how many (?:min|sec|hour)(?: till| until| before| do| "
     r"to)?|is (?:it|there) (?:a )?(?:time delay|delay|wait)(?: on| before)?|button "
     r"(?:sequence|combination|combo)|how many (?:times|presses)(?: do i| to)? press|"
     r"got to wait|supposed to (?:wait|take [a-z]+)|long enough(?: yet| now)?|(?:by "
     r"now|yet) "
     r"\?"),
    ("ask_next",
     r"(?:ok |so |and |then |well )*(?:now what|what now|what next|what is next|next "
     r"step|next check|next test|next one|next thing|next \?|where do i go(?: from "
     r"here| next| now)?|where to(?: now| next| from here)?|what (?:do|should|would|"
     r"can|shall) (?:i|we|you) (?:do|check|try|look at|test|measure|start with)(?: "
     r"next| now| first| then)?|where (?:do|should) i (?:start|begin|look)(?: next| "
     r"first)?|what else(?: can i| should i| do i)?(?: check| try| do)?|what is the "
     r"next (?:step|check|test|thing|move)|how do i (?:proceed|check (?:it|that|this)|"
     r"test (?:it|that|this)|go on)|what to (?:check|do|test|try)(?: next| now| "
     r"first)?|then what|and then \?|go on|continue|carry on|done (?:that )?next|give "
     r"me the next(?: one| step| check)?|ready for the next(?: one| step)?|what do you "
     r"(?:suggest|want me to do|need)|any (?:ideas|suggestions)|help me out)|^next$|"
     r"next $"),
    ("ask_meaning",
     r"(?:what|wat) (?:does|do|is|would|did|the|are|about)(?: the| a| an| it| its| is| "
     r"this| that| [0-9]+| [a-z]+[0-9]*){0,6} (?:mean|means|meaning|stand for|about|"
     r"telling me|tell me|saying)"
     r"|what is (?:a |an |the |it |that |this |code |error |with )*(?:[a-z]?[0-9]+|"
     r"that|this|it)(?: code| error| fault| about| on (?:this|that|it|a [a-z]+|the "
     r"[a-z]+)| flashes| flash)*|(?:mean|means) (?:good|bad|what|anything|that|it "
     r"is)(?: or (?:good|bad))?|(?<!it )(?<!that )(?<!there )(?<!they )(?:is|are) "
     rf"{_IT} (?:a |an |the |that |about )*(?:good|bad|normal|ok|fault|comms|"
     r"communication|fan|compressor|sensor|board|serious|problem|error|lockout)(?: "
     r"or(?: the| a)? [a-z]+)?(?: \?)?|meaning of|decode(?: this| that)?|look ?up|what "
     r"code is|meaning \?|what would [0-9]+|[a-z0-9]+ means what|is that (?:[a-z]+) \?|"
     r"what fault is|which fault|(?:got|is) (?:any|an) idea what|what is (?:wrong|up|"
     r"going on)(?: with)?|what is causing|what could (?:it|cause|be)|good or bad|what "
     r"is [0-9]+ (?:flashes|flash|reds|greens)"),
    ("off_topic",
     r"(?:what|how much)(?: do| should| would| can| does| did| will)*(?: i| we| you| "
     r"it| that| this| a| the| new| one)* (?:charge|cost|costs|bill|quote|price|worth|"
     r"run me)(?: for)?(?: this| that| it| the job)?|how much (?:is|for|are|does|"
     r"do)(?: a| the| this| that| one| new| these| it)*(?: [a-z]+)?|(?:price|cost|"
     r"quote|labou?r rate|hourly rate) (?:of|for|on)|cheapest|where can i (?:buy|get|"
     r"order|find) (?:a|one|it|the)|who won|what is the score|the game last night|tell "
     r"me a joke|(?:my|his|her|our) (?:pickups?|trucks?|cars?|van|boat|suv|rv)(?: "
     r"is)?(?: ac| a / c"
     r"| air con)?|what is the weather|weather (?:today|tomorrow|forecast)|football|"
     r"baseball|basketball|hockey|soccer|lottery|(?:under|in|out of) warranty|warranty|"
     r"recipe|dinner|lunch|beer|are you (?:a "
     r"|an )?(?:robot|human|ai|bot|real|person)|your name|how old are you|do you like|"
     r"stock price|bitcoin|president|washing machine|dish ?washer|lawn ?mower|laptop|"
     r"printer|my phone|wifi password|sing me|election"),
    ("skip",
     r"skip(?: the| that| this| it| those| all)*(?: [a-z]+)?(?: stuff| check| test| "
     r"step| one| part| question)?|pass(?= |$)(?! (?:the|it|to|on|through))|next "
     r"question|move on|leave (?:that|it) for (?:now|later)|come back to (?:that|"
     r"it)(?: later)?|not doing that|can not do that(?: one)?(?: now| here)?|do not "
     r"want to(?: do that)?|rather not"),
    ("dont_know",
     r"(?:i )?(?:do not|did not|would not|could not) (?:really |rightly |even "
     r")?(?:know|notice|look|see|remember|check)(?: that| it| yet| really| sorry)*(?= |"
     r"$)(?! (?:any|a|the|if|what|how|why|an|no|code|codes|error))|no (?:idea|clue)|"
     r"not (?:a )?(?:clue|idea)|beats me|search me|(?:can not|could not) (?:tell|say|"
     r"see it|read it|remember|get to it|make it out)|who knows|^(?:i am )?not sure(?: "
     r"really| about that| sorry)?(?= ,|$| \.)|^unsure|^unknown|idk|^no idea|haven ?t "
     r"a clue|have not (?:looked|checked|a clue|got a clue)"),
    ("greet",
     r"^(?:hi|hello|hey|hiya|yo|howdy|morning|good (?:morning|afternoon|evening|day)|g "
     r"?day|afternoon|evening|greetings)(?: there| all| guys| mate| again| team| "
     r"everyone)*|thanks(?: a lot| a million| mate| so much| buddy| man| for (?:that|"
     r"the help|your help))*|thank you(?: so much| very much)*|cheers(?: mate)?|"
     r"appreciate (?:it|that)|much appreciated|bye|good ?bye|see you(?: later)?|have a "
     r"good one"),
)  # fmt: skip
_ACTS = tuple((act, rx(pattern)) for act, pattern in _TABLE)
_YES = re.compile(
    r"^(?:(?:uh huh|mm ?hmm|mhm|yes|yep|yeah|yea|yup|ya|yah|aye|sure|correct|right|"
    r"affirmative|absolutely|definitely|exactly|ok|okay|y|that is right|it is|it does|"
    r"they are|it did|i did|i have|there is|you bet|roger|indeed|for sure|true|"
    r"done)(?: (?:sure|it is|it does|it did|they are|i did|i have|there is|mate|sir|"
    r"thanks|please|correct|exactly|boss))*)(?= [,.!?]|$)"
)
_LEADING_YES = re.compile(r"^(?:yes|yep|yeah|yea|yup|aye|affirmative|uh huh)(?= )")
_NO = re.compile(
    r"^(?:no|nope|nah|naw|na|n|negative|not|nay|never|no way|no sir|not really|not at "
    r"all|it is not|it does not|it did not|they are not|i did not|i have not|there is "
    r"not|not yet|neither|none|false|wrong)(?: (?:sir|mate|thanks|it is not|it does "
    r"not|it did not|it has not|there is not|they are not|i did not|i have not|not "
    r"really|not yet|other one|the other one|none|at all))*(?= [,.!?]|$)"
)
_LEADING_NO = re.compile(
    r"^(?:nope|nah|naw|negative|no(?= (?:it|the|other|they|i|that|there|we|she|he|not|"
    r"its|just|only|its|both|neither)(?!\S)))(?= )"
)


def asks(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim what the turn asks for or answers, at most once each."""
    found: list[Claim] = []
    taken = view
    for act, pattern in _ACTS:
        match = pattern.search(taken.folded)
        if match and match.end() > match.start():
            found.append(Claim(*match.span(), act))
            if act != "correct":
                taken = taken.without([match.span()])
    answer = _answer(view)
    if answer and not {"correct", "undo"} & {claim.item for claim in found}:
        found.append(answer)
    return sorted(found, key=lambda claim: claim.start)


def _answer(view: Tokens) -> Claim | None:
    """Return a yes or no that opens the text."""
    for pattern, act in (
        (_NO, "no"), (_YES, "yes"), (_LEADING_YES, "yes"), (_LEADING_NO, "no"),
    ):  # fmt: skip
        match = pattern.match(view.folded)
        if match:
            return Claim(*match.span(), act)  # type: ignore[arg-type]
    return None


def acts_of(view: Tokens, vocabulary: Vocabulary) -> dict[Act, tuple[int, int]]:
    """Return each act of a text with its place."""
    return {
        claim.item: (claim.start, claim.end)
        for claim in asks(view, vocabulary)
        if isinstance(claim.item, str)
    }
