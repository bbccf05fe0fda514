"""Workshop talk as data: what is typed, and the words the literature has for it.

Used on questions only, and in addition to the words as typed: the manuals do not
say "packs in" or "duff", so these lead from talk to print and not back. True
synonyms, which go both ways, stand in `synonyms`.

Each entry is a phrase in lower case without punctuation, as `plain_words` gives
it. Verbs are given with their forms, because slang inflects as it likes.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

_TALK = """
# what is wrong, in a word
bust|busted|knackered|duff|junk|toast|cooked|fried|shot|blown|kaput|scrap = faulty
goosed = faulty
wont do owt|wont do nothing|does nothing|doing nothing = does not start no supply
nothing moves = does not start no supply
nothing moving|nothings moving|nothing happens|sat there = does not start
still sat there = does not start
sulking|sits out|sat out|wont take a reset|shes done|refuses = lockout stays off
playing up|acting up|acting weird|misbehaving = fault
two things|both at once|at once|more than one = several faults
nowt = nothing
owt = anything
# coming and going
kicks in|kick in|kicks on|kick on|kicking in|fires up|fire up = starts start
gets going = starts start
comes on|come on|comes in|wakes up|joins in|joined in|gets moving = starts start
spins up = starts start
kicks off again|has another go|tries again|try again|has a go = tries again restart
another go = tries again restart
till she starts|carry on|carries on|come back by itself = starts again by itself
come back on its own|comes back on its own|on her own|on its own = by itself
goes|attempts = tries
packs in|pack in|packs up|gives up|throws the towel in = gives up lockout stops
calls it a day|quits = gives up lockout stops
knock it off|knocks it off|knocks off|cuts out|cut out = stop stops protection
cutting out|drops out = stop stops protection
drop out|dies|died|conks out|shuts off|shuts down|shut down = stops protection stop
bails = stops protection stop
short cycling|short cycles|on off on off = starts and stops all the time
runs and quits = starts and stops all the time
flipped|flip|flipping|flick|flicked = switch
powered it up|powered up|put power on|switched it on = supply switched on
flat out|full chat|full tilt|full whack = full speed
behind|how far behind = later follows after
first fire|first time|brand new|fresh install|new install|just fitted = first start
rest|rests|breather|sit|sits|hang about|hang on|hold on = minimum off time wait
twiddle = minimum off time wait
between runs = after stop minimum off time
# power
mains|juice|leccy|electric = supply
blipped|blip|browned out|brownout|brown out|dipped = supply voltage dip standby
flickered|sagged = supply voltage dip standby
generator|genny = generator supply
thunder|lightning|lightening|storm|struck = lightning storm supply
no supply|without supply|off all weekend|off all winter = long without supply
shut off all = long without supply
mcb|rcd|rcbo|gfci|breaker pops|pops the breaker = breaker trips
pops|popped|popping|kicks out|throws|threw = trips
earth|earthed|chassis|frame = ground
megger|meggered|megged|megging = insulation resistance to ground
big dc|hv dc|high dc|rail|link = DC bus voltage
little dc|small dc|dc feed = DC supply voltage of the fan motor
choke|inductor = reactor
diode beep|diode range|diode test|diode mode = diode test power module
ohm out|ohms out|ohm it|ohms ok|rings out = resistance
uvw|u v w = U V W winding resistance compressor
volts good|volts ok = supply voltage in band
# parts
caps|cap = capacitors
head|heads|indoors|wall unit|cassette = indoor unit
condensor|condenser|condensing unit|outdoors|box outside = outdoor unit
comp|pump = compressor
probe|stat sensor|therm|thermistor = sensor
hot gas pipe|hot gas line|hot gas = discharge
solenoid|four way|reversing = four-way valve coil resistance
heat sink|heatsink|fins = heat sink fins of the power module
card|pcb|mainboard|main pcb|brain|computer = board
power module|ipm|module = power module
sticker|tag|label = label
sniffer|gas detector|gas alarm|leak detector = refrigerant leak sensor
lineset|line set|pipework|pipe run|pipe length = piping length
post|posts|terminals|lugs = terminals
handset|clicker|remote|controller = remote control
screen|readout|display = display
comms|comm|talk|talking|chat|data wire|signal = signal line message between units
comms lost|lost comms|not talking = no message from the indoor unit signal line
no comms = no message from the indoor unit signal line
hp switch|high pressure cutout|hp cutout|cutout|63h = high pressure switch
# refrigerant
gas|freon|coolant = refrigerant
top up|topping up|add|extra gas = additional refrigerant charge
factory gas|gas weight|charge weight|how much gas = refrigerant charge factory
grams a metre|grams per m|grams per metre = additional refrigerant per metre
grams a meter = additional refrigerant per metre
free length|chargeless = length without additional charge
gauges = gauges pressure
# doing
jump out|jump|jumper|jumped|bridge out|bypass|defeat|loop out|tie together = bridge
swap|swapped|swapping|change out|changed|changing|fit new = replace
condemn|condemning|bin it|bin|chuck = replace the part
poke|poke first|where do i start|where do i begin|look for = check likely causes
look at = check likely causes
where to start|what now|whats next|go next = check likely causes
culprit|culprits|suspects|likely cause|usual suspects|what makes it|why = cause causes
cleared|clear|clearing|wipe|wipes|wiped|reboot|power cycle|cycled = reset erases
tally|tallies|score = count of stops
old codes|old fault|what it was|last fault|history|past codes = last fault memory
read back = last fault memory
second reset|twice inside|cleared twice = second reset waits
bleed|bleed down|bleed off = discharge capacitors wait volts
before i go in|go in|hands on|hands in|get in there = before work inside safety
unplug|unplugged|pull the plug|pull = pull plug
how tight|tighten|do up|nip up|terminals up = tightening torque terminals
pics|photos|snaps|picture|film it = photograph film the lamps
ring|rings|ringing|phone = call
budges|budge = change
# lamps
winks|wink|winking|blinks|blink|blinking|flashing = flashes
solid|on all the time|stays on|lit all the time = steady lit
real slow|slow|slowly = slowly evenly
never gaps|no gap|no pause|doesnt pause|never stops = without a longer pause evenly
gap|gaps = pause
in step|in time|same time|at the same moment = both together
taking turns|alternating|turn about|one then the other = alternately
which is which|who do i trust|one thing another = two displays differ
cant see|cannot see = where the lamp is
yellow|yellows|orange = yellow amber
# what the customer sees
puddle|drips|dripping|leaking water|wet|soaked = water from the indoor unit drain
frozen|frozen solid|iced|ice|icicle|block of ice = ice frost iced coil
never gets cold|not cold|no cooling|blows warm|wont cool = runs but does not cool
cools slow = runs but does not cool
no heat|not warm|blows cold|wont heat|stone cold room = does not heat
whoosh|hiss|gurgle|cloud|steam|smoke off = defrost steam noise normal
de iced|de ice|deiced|thaw|thawing = defrost
rattle|racket|noisy|grinding|squeal|banging = noise
stinks|smells|stench = smell
scorcher|scorching|hot day|heat wave|boiling out = hot day high outdoor temperature
frosty|freezing out|cold morning|cold snap|bitter = low outdoor temperature cold
wind|windy|gust = wind turns the fan
fuzz|fluff|leaves|cottonwood|muck|crud|fur = fluff on the outdoor coil blocked air
blows|blowing = fan runs
blank|dark|nothing on = dark
split|delta t|temperature drop = air in and out difference
yrs|years|shelf life = years life
good numbers|numbers|what should i see|meant to be|supposed to = normal value limits
ok at = normal value limits
good or junk|fine|normal|is that right|in spec|out of spec = value limits
# data and plates
fuse size|breaker size|what breaker|what fuse|what size breaker = recommended fuse
amp draw|amps|draws|pulls|current draw = highest current
how loud|db|decibels = sound
how heavy|heavy|weighs = mass
how long can the pipes be|max run|longest run = longest piping length
how cold can it|lowest it heats|works down to = heating outdoor air limits
how cold does it = heating outdoor air limits
how hot can it|works up to = cooling outdoor air limits
build date|how old|date code|made|age of it = serial number year week
plate|rating plate|data plate|spec plate = nameplate
chip|eprom|eeprom|rom|plug in = plug-in stored data of the board
jumpers|dip|dips|dip switches|settings = switches settings of the board
which wire|what colour|colour goes|wiring = wires terminals colours
how tight a joint|torque = tightening torque
tolerance|how far off|how close = tolerance of the sensors
# order of work
what order|step by step|walk me through|how do i = steps order
isolate|make safe|lock off|loto|safe to open = isolate every supply lock tag measure
dead|proved dead|discharged|is it dead = measure volts capacitors before touching
test mode|test run|force run|force it to run = test fixed speed
hold|held|which button|which buttons|buttons = push button hold
what do you need|what do i tell|support|help desk = tell the support desk
who do i tell = tell the support desk
ticket|licence|allowed|legal = licensed person
guests|customer|people = persons
# crossed, loose, wet
crossed|mixed up|wrong way round|swapped over|cross wired|back to front = exchanged
wobbly|not tight|hanging off|pulled out = loose not seated
chewed|nicked|mouse|rats|nibbled = cable damaged
corroded|green crust|wet plug|water in = water in plug
stuck|jammed|seized|locked rotor|wont spin|wont turn = seized blocked
spins free|free by hand|turns by hand = fan free by hand motor board
hums|humming|buzzes but = compressor hums does not start
runs backwards|backwards|wrong direction = turns backwards in the wind
# protections
too hot|hot|overheating|cooking = temperature above limit
how many|how often|number of = stops in minutes limit locked out after
before it locks|locks out|locked out|lock out|lockout = lockout
hour|the hour|sliding|old ones count = sliding window minutes counts
drop off the count = sliding window minutes counts
slows down|slowing|lazy|throttles|holds back|ramps down = speed lowered held limit
lets go|releases|resets itself|makes again|remake|closes again = closes by itself
frost guard|freeze protection|freezestat = frost guard indoor coil
# what is seen and heard
tick|ticks|ticking|click|clicks|clicking = ticking noise expansion valve
beep|beeps|buzzer|chirp = beep
drain|condensate|drip tray|tray = drain pan hose
float|bobber = float switch
smell|burny|burnt|burning|smoke|smoking = burning smell scorched
sweating|damp|moist = moist air
filter|filters|screens = filter
bearing|whine|whining = bearing
sun symbol|heat mode = mode heat
cold air|cold blast|cool draught|chilly air = cool air in heating indoor fan held back
waits to blow|when does it blow|fan waits = indoor fan starts when the pipe is warm
how often does it defrost|every hour = time between defrosts
no code|no codes|no lights|no flashes|nothing on it|no winks = without a code
no light|no lights at all|lamps out|all dark = lamp dark no supply to the board
lights out = lamp dark no supply to the board
half an hour|a while|minutes later = minutes
keypad|keys|locked buttons = keys locked
old sensor|worn out|end of life|expired = sensor worn out
set off|false alarm|hairspray|aerosol|paint fumes = false alarms solvents
alarm going|alarm goes off|gas in the room|leak alarm = leak alarm everybody out
# charge that stays, and isolating
bite|bites|zap|zapped|belt|shock|kick off it = stored charge capacitors
kill|kill it|kill the power|knock the power off|turn it off = switch off every supply
feeds|fed from|fed by|where does it get its power = supply of the indoor unit
stick my hands in|hands inside|open it up|cover off|lid off = before work inside
panel off = before work inside
still live|still hot = stays charged live
# waits
how long off|leave it off|off for how long = leave supply off seconds
how long do i leave = leave supply off seconds
straight away|right away|instantly = at once
before anything moves|before it moves|first thing = nothing turns seconds first start
does nothing at first = nothing turns seconds first start
power cut|powercut|outage|blackout|lost power = power failure supply returns
power came back = power failure supply returns
remembers|forgets|loses its settings = remembers mode temperature
crankcase|sump heater|warm up = preheating winding of the stopped compressor
warming up|preheat = preheating winding of the stopped compressor
when does the code|code pop up|show a code = when a code appears seconds
how long for a code|code show = when a code appears seconds
low voltage|low volts|how low|volts low = supply below standby
high voltage|high volts|how high|over voltage = supply above limit
comes good|back to normal|back up|recovers = supply back in band
stays lit|glow|glowing|glows = lit charge that is left
# counts and memory
strikes|lives|chances|goes left|tries left = stops counted before lockout
how many left = stops counted before lockout
forgive|forgets the count|count reset|back to zero = sets the count to zero
which shows|which first|both codes = several faults lowest number shown
one code or two = several faults lowest number shown
count it|counting|how do i count|count right = count the flashes pause two groups
rounds = count the flashes pause two groups
# measuring
across|between which|where do i put the leads|probes on|meter on = measure between
tacho|feedback|hall|pulse wire = pulses wire of the fan motor
what should it read|should read|supposed to read|ought to read = value table
meant to read = value table
ohm at|read at|k at = resistance at temperature table
sags|sag|drop on start|dips on start = voltage sinks during the start
unbalanced|uneven|one off from the others = windings alike spread
different from the others = windings alike spread
to ground|down to earth|leak to ground|leaking to earth = to earth insulation megohm
rectifier|bridge diode|front end = rectifier power module diode test
# change of parts and closing up
new board|spare board|replacement board|fitted a board = spare board replace
put a board in = spare board replace
transfer|move over|carry over|copy = plug-in from the old board
same code|same fault|didnt fix it|no better = same code fault still present
still does it = same code fault still present
wrong part|misdiagnosed|wasnt it = new part was not the fault
clean it|washing|wash|jet wash|hose it = clean the coil
after i finish|when im done|put back together = covers start again watch one cycle
close up = covers start again watch one cycle
"""


def _entries() -> dict[str, str]:
    found: dict[str, str] = {}
    for line in _TALK.splitlines():
        said, equals, printed = line.partition(" = ")
        if equals:
            found |= dict.fromkeys(said.split("|"), printed)
    return found


TALK: Mapping[str, str] = MappingProxyType(_entries())
"""A phrase of talk -> the words of print for it."""

_LONGEST = max(len(phrase.split()) for phrase in TALK)
_WORD = re.compile(r"[^\W_]+")
_APOSTROPHE = re.compile(r"(?<=[^\W\d_])['\u2019](?=[^\W\d_])")


def plain_words(text: str) -> list[str]:
    """Return the words of a text in lower case; "don't" is one word, "dont".

    Examples
    --------
    >>> plain_words("What's P-6?")
    ['whats', 'p', '6']
    """
    return _WORD.findall(_APOSTROPHE.sub("", text.casefold()))


def in_print(text: str) -> tuple[str, str]:
    """Say a question in the words of print.

    Returns
    -------
    said : str
        The whole question, its talk replaced; '' when it holds none.
    added : str
        Only the words that took the place of talk.

    Examples
    --------
    >>> in_print("caps still hot?")
    ('capacitors stays charged live', 'capacitors stays charged live')
    """
    words = plain_words(text)
    said: list[str] = []
    added: list[str] = []
    at = 0
    while at < len(words):
        length, printed = _longest(words, at)
        if printed:
            added.append(printed)
        said.append(printed or words[at])
        at += length
    return (" ".join(said) if added else ""), " ".join(added)


def _longest(words: list[str], at: int) -> tuple[int, str]:
    for length in range(min(_LONGEST, len(words) - at), 0, -1):
        printed = TALK.get(" ".join(words[at : at + length]))
        if printed:
            return length, printed
    return 1, ""
