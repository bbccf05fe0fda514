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
attempts = tries
packs in|pack in|packs up|gives up|throws the towel in = gives up lockout stops
calls it a day|quits = gives up lockout stops
knock it off|knocks it off|knocks off|cuts out|cut out = stop stops protection
cutting out|drops out = stop stops protection
drop out|dies|died|conks out|shuts off|shuts down|shut down = stops protection stop
bails = stops protection stop
short cycling|short cycles|on off on off = starts and stops all the time
runs and quits = starts and stops all the time
flipped|flipping|flick = switch
powered it up|powered up|put power on|switched it on = supply switched on
flat out|full chat|full tilt|full whack = full speed
how far behind = later follows after
first fire|first time|brand new|fresh install|new install|just fitted = first start
breather|hang about|hang on|hold on = minimum off time wait
twiddle = minimum off time wait
between runs = after stop minimum off time
# power
mains|juice|leccy = supply
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
head|heads|wall unit|cassette = indoor unit
condensor|condenser|condensing unit|box outside = outdoor unit
comp|pump = compressor
probe|stat sensor|therm|thermistor = sensor
hot gas pipe|hot gas line|hot gas = discharge
solenoid|four way|reversing = four-way valve coil resistance
heat sink|heatsink|fins = heat sink fins of the power module
card|pcb|mainboard|main pcb|brain|computer = board
power module|ipm|module = power module
sniffer|gas detector|gas alarm|leak detector = refrigerant leak sensor
lineset|line set|pipework|pipe run|pipe length = piping length
terminals|lugs = terminals
handset|clicker|remote|controller = remote control
screen|readout|display = display
comms|comm|talk|talking|chat|data wire|signal = signal line message between units
comms lost|lost comms|not talking = no message from the indoor unit signal line
no comms = no message from the indoor unit signal line
hp switch|high pressure cutout|hp cutout|cutout|63h = high pressure switch
# refrigerant
gas|freon|coolant = refrigerant
top up|topping up|extra gas = additional refrigerant charge
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
culprit|culprits|likely cause|usual suspects|what makes it = cause causes
cleared|clear|clearing|wipe|wipes|wiped|reboot|power cycle|cycled = reset erases
tally|tallies|score = count of stops
old codes|old fault|what it was|last fault|history|past codes = last fault memory
read back = last fault memory
second reset|twice inside|cleared twice = second reset waits
bleed|bleed down|bleed off = discharge capacitors wait volts
before i go in|go in|hands on|hands in|get in there = before work inside safety
unplug|unplugged|pull the plug|pull = pull plug
how tight|tighten|do up|nip up|terminals up = tightening torque terminals
pics|photos|snaps|film it = photograph film the lamps
budges|budge = change
# lamps
winks|wink|winking|blinks|blink|blinking|flashing = flashes
solid|on all the time|stays on|lit all the time = steady lit
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
wind|windy = wind turns the fan
fuzz|fluff|leaves|cottonwood|muck|crud|fur = fluff on the outdoor coil blocked air
blows|blowing = fan runs
blank|dark|nothing on = dark
split|delta t|temperature drop = air in and out difference
yrs|years|shelf life = years life
good numbers|numbers|what should i see|meant to be|supposed to = normal value limits
ok at = normal value limits
good or junk|is that right|in spec|out of spec = value limits
# data and plates
fuse size|breaker size|what breaker|what fuse|what size breaker = recommended fuse
how loud|db|decibels = sound
how heavy|weighs = mass
how long can the pipes be|max run|longest run = longest piping length
how cold can it|lowest it heats|works down to = heating outdoor air limits
how cold does it = heating outdoor air limits
how hot can it|works up to = cooling outdoor air limits
build date|how old|date code|age of it = serial number year week
rating plate|spec plate = nameplate
chip|eprom|eeprom|rom = plug-in stored data of the board
jumpers|dip|dips|dip switches|settings = switches settings of the board
which wire|what colour|colour goes|wiring = wires terminals colours
how tight a joint|torque = tightening torque
tolerance|how far off|how close = tolerance of the sensors
# order of work
what order|step by step|walk me through|how do i = steps order
isolate|make safe|lock off|loto|safe to open = isolate every supply lock tag measure
proved dead|discharged|is it dead = measure volts capacitors before touching
test mode|test run|force run|force it to run = test fixed speed
hold|held|which button|which buttons|buttons = push button hold
what do you need|what do i tell|support|help desk = tell the support desk
who do i tell = tell the support desk
ticket|licence|legal = licensed person
# crossed, loose, wet
crossed|mixed up|wrong way round|swapped over|cross wired|back to front = exchanged
wobbly|not tight|hanging off|pulled out = loose not seated
chewed|nicked|mouse|rats|nibbled = cable damaged
corroded|green crust|wet plug|water in = water in plug
stuck|jammed|seized|locked rotor|wont spin|wont turn = seized blocked
spins free|free by hand|turns by hand = fan free by hand motor board
buzzes but = compressor hums does not start
runs backwards|backwards|wrong direction = turns backwards in the wind
# protections
too hot|overheating|cooking = temperature above limit
before it locks|locks out|locked out|lock out|lockout = lockout
old ones count = sliding window minutes counts
drop off the count = sliding window minutes counts
slows down|slowing|throttles|holds back|ramps down = speed lowered held limit
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
fed from|fed by|where does it get its power = supply of the indoor unit
stick my hands in|hands inside|cover off|lid off = before work inside
panel off = before work inside
still live|still hot = stays charged live
# waits
how long off|leave it off|off for how long = leave supply off seconds
how long do i leave = leave supply off seconds
straight away|right away|instantly = at once
before anything moves|before it moves = nothing turns seconds first start
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
# what a unit takes and stands
coldest|hottest|lowest temp|highest temp = outdoor range cooling heating limits
how big a breaker|amps|amp draw|current draw = rated highest current
fuse rating|rating of the fuse|breaker rating = recommended fuse rated current
bigger fuse|bigger breaker|larger fuse|upsize = never raise a fuse larger breaker
set point|setpoint|turned the stat|stat down|stat up|turned it down = set temperature
turned it up|changed the temp = set temperature
clearance|boxed in|tight spot|hedge|bush|airflow|no air = air path blocked give air
dust|cobwebs|insects|wasps|bugs|spiders = insects fluff on the fins
part number|part no|spare number|order number = spare parts number
which units|which ones|what models|does it apply = units concerned serial number
# hands
yank|yanked|whip out|rip out|pop off|take off = pull plug
live|powered|while its on|with power on = supply on charged bus
flicked|flipped on|switched on|turned on|turn it on = supply switched on
prove|test a sensor|prove a sensor = checks sensors measure
test the sensor|check a sensor = checks sensors measure
test with a meter|how do i test = check measure
helpline|hotline|tech support|what details = tell the support desk
film|video|record it = film the lamps
which cabins|which rooms|which huts|which lodges = which units are where cabins
# how it shows itself
throws the code|code up|throw a code = fault is shown appears seconds
codes come up|before it shows = fault is shown appears seconds
couple of faults|faults together|several things|multiple faults = several faults
fall off|falls off|drop off = older stop no longer counts window
drops off|expire|age out = older stop no longer counts window
runs slow|slow on hot|sluggish|weak|half speed = speed lowered held by a limit
lost the code|get it back|missed the code|didnt see it = last fault memory
not in the list|off the chart|not in the book|not listed = counts not in this table
suspect|suspects|suspect first|usually|most likely|first guess = likely causes in order
actually the board|really the board = board is suspected only when
is it the board|blame the board = board is suspected only when
voltage drop|drop when|how much drop|how far may = reading may fall sag at start
how does it decide|what makes it think|how does it know = how fault is detected
hum|hums|humming = hums runs
vibrates|vibration|shakes|shaking = rattle pipe touches
oily|oil round|oil at = oil at the joints leak
bent|snapped|cracked|crushed = damaged
polarity|plus and minus|reversed leads = exchanged polarity
uphill|loop in the hose|no fall = drain hose without fall
running down the wall|down the wall|ceiling wet = water from the indoor unit drain
stored codes|stored faults|code history|recall = stored faults memory
where do i measure|measure where|which terminals = measure between terminals
difference in out|air temp difference|temp difference = air out less air in
which plug|what plug|which connector|which socket = plugs of the board
what lamp|which lamp|which led|what light = lamps of the boards
curve|table for = table
# plain words that mean one thing here
how many goes|number of goes|goes at it = how many tries
sits there|how long do i sit|just sits|rest between|let it rest = minimum off time wait
dead|stone dead = does not start no supply
sticker|tag = label
post|posts = terminals
real slow|blinks slow|slow blink|slowly = slowly evenly
sits at|sit at|reads|reading of|stands at|showing = value measured
jumps about|jump about|jumping about|bounces = reading swings
incoming|line voltage|line is|the line|feed voltage = supply voltage L and N
at the strip|the strip|on the strip = terminal strip supply
big pins|big terminals|test points|big caps = DC bus TP1 TP2
lights dim|lamps dim|dims when = supply sags at start
drops at start|drops on start|dips when it starts|pulls down = supply sags at start
under load|while running|when running = while the compressor runs
wont restart|not restart = minimum off time after stop
restart right away|straight back on = minimum off time after stop
write down|note down|jot down|paperwork = note the readings
winter heater|winding heater = preheating winding of the stopped compressor
heater in winter = preheating winding of the stopped compressor
where are the lamps|find the lamps|where is the lamp = cover lamps can be seen
what clears|how do i clear|what gets rid = reset by kind of display recovery
# counting, timing, ending
how many times|how many trips|how many stops = stops in minutes limit locked out after
inside the hour|within the hour|in an hour = sliding window in 60 minutes
what amps does it trip|trip amps|amps does it trip on = overcurrent limit
go again|goes again|start up again = starts again
wont go|wont run|not going|doesnt go|wont work = does not start stands still
no break|no break in it|non stop|endless = without a longer pause evenly
freezing morning|freezing day|frosty morning|minus out = low outdoor temperature
dont agree|dont match|disagree|dont tally|differ = differ count again
isnt answering|not answering|no answer|no reply|silent = no message indoor unit silent
ends it|what ends|stops it flashing|makes it stop = recovery by itself or reset only
might be|could be|what it might be|possible reasons = likely causes
transistors|igbt|igbts|mosfets|output stage = power module
insulation test|insulation|meg test = winding to ground 500 V Mohm
cycling|cycles|stop start|stopping and starting = starts and stops all the time
all winter|all summer|for months|stood for months = long time without supply preheating
last checks|job done|all done|before i leave = after the work watch one full cycle
which way up|upside down|which way round = notch upwards upside down
falls away|drops away|collapses = low when running
allowed to|am i allowed|may i = licensed person only
# more of the same
ease off|eases off|backs off|back off|ramps back = speed lowered above a limit
accuracy|accurate|how true|spec of the = tolerance
own feed|separate feed|own breaker|own supply = supply of its own isolator
fed separately = supply of its own isolator
happy with|copes with|puts up with = supply band at rest range
can it burn|flammable|catch fire|explode|explosive = mildly flammable class A2L
gale|gust|gusts = wind turns the fan
went dark|its dark|lamp out = dark lamp proves nothing
changed the temperature|changed the mode = changing the set temperature mode
sooner|quicker|shorten|speed it up|hurry = wait cannot be shortened
wont get below|wont get down|stays warm|still warm|cant keep up = runs but does not cool
crusty|crust|furred|green stuff = green deposit on the plug
whistling|whistle|screech|squeak = noise grinding bearing
data plate|where is the plate = nameplate of the outdoor unit
by accident|by mistake|wrong terminal = exchanged wire destroys
ring|rings|ringing = call
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


def in_print(text: str) -> tuple[str, tuple[str, ...]]:
    """Say a question in the words of print.

    Returns
    -------
    said : str
        The whole question, its talk replaced; '' when it holds none.
    added : tuple of str
        What took the place of each piece of talk.

    Examples
    --------
    >>> in_print("caps still hot?")
    ('capacitors stays charged live', ('capacitors', 'stays charged live'))
    >>> in_print("308 on it")
    ('308 DC bus voltage on it', ('DC bus voltage',))
    """
    words = plain_words(text)
    said: list[str] = []
    added: list[str] = []
    at = 0
    while at < len(words):
        length, printed = _longest(words, at)
        if not printed:
            said.append(words[at])
            printed = _quantity(words[at], words[at + 1 : at + 2])
        if printed:
            said.append(printed)
            added.append(printed)
        at += length
    return (" ".join(said) if added else ""), tuple(added)


_READINGS = (
    (range(175, 266), "supply voltage V AC"),
    (range(275, 431), "DC bus voltage"),
)
"""What a bare number of volts is on a unit with a 230 V supply: the supply itself,
or what its rectifier makes of it. Common practice, no source."""
_OTHER_UNITS = (
    "ohm ohms kohm k meg psi bar kpa a amps hz rpm minutes min seconds sec g gram "
    "grams kg m metre metres mm c f degrees deg hours days"
)
_NOT_VOLTS = frozenset(_OTHER_UNITS.split())


def _quantity(word: str, following: list[str]) -> str:
    """Return what a reading is of, by its size and unit; '' when it tells nothing."""
    if re.fullmatch(r"\d+k", word) or (word.isdecimal() and following == ["k"]):
        return "sensor resistance kohm"
    if word.isdecimal() and following in (["meg"], ["megs"], ["megohm"]):
        return "to ground Mohm"
    number = re.fullmatch(r"(\d{3})(?:v|vac|vdc)?", word)
    if number is None or set(following) & _NOT_VOLTS:
        return ""
    size = int(number.group(1))
    return next((meaning for sizes, meaning in _READINGS if size in sizes), "")


def _longest(words: list[str], at: int) -> tuple[int, str]:
    for length in range(min(_LONGEST, len(words) - at), 0, -1):
        printed = TALK.get(" ".join(words[at : at + length]))
        if printed:
            return length, printed
    return 1, ""
