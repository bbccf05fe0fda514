"""One word for many: contractions, sound-alikes, short forms and synonyms.

The right side may be several words. Words of the job keep the form they have
here in every pattern of this package: a lamp, LED or light is `light`, a wink or
blink is `flash`, a PCB is `board`. What a person wrote stays in the fact's words.
"""

from __future__ import annotations

from assistant.language.lexicon.words import words

_CONTRACTIONS = """
isnt=is not|aint=is not|isent=is not|arent=are not|wasnt=was not|werent=were not
doesnt=does not|dosnt=does not|dosent=does not|doesent=does not|dont=do not
didnt=did not|wont=will not|wouldnt=would not|cant=can not|cannot=can not
couldnt=could not|shouldnt=should not|havent=have not|hasnt=has not|hadnt=had not
its=it is|im=i am|thats=that is|theres=there is|whats=what is|hows=how is
whys=why is|shes=she is|hes=he is|ive=i have|weve=we have|youve=you have
theyre=they are|youre=you are|were=were|wheres=where is|whos=who is|itll=it will
gotta=got to|gonna=going to|wanna=want to|dunno=do not know|kinda=kind of
lemme=let me|gimme=give me|wth=what|whatre=what are|em=them|dya=do you
"""

_SHORT_FORMS = """
comp=compressor|compr=compressor|comps=compressors|stat=thermostat|tstat=thermostat
t-stat=thermostat|thermo=thermostat|condensor=condenser|condencer=condenser
pwr=power|brkr=breaker|bkr=breaker|trun=turn|tiems=times|resset=reset
pcb=board|mainboard=main board|bout=about|burny=burning|til=till|thrice=3 times
pcba=board|boards=boards|led=light|lamp=light|lite=light|leds=lights
lamps=lights|lites=lights|light=light|thermistor=sensor|thermister=sensor
therm=sensor|probe=sensor|thermistors=sensors|probes=sensors|senser=sensor
blink=flash|blinks=flashes|blinking=flashing|blinked=flashed|wink=flash
winks=flashes|winking=flashing|winked=flashed|flashs=flashes|flashin=flashing
blinkin=flashing|winkin=flashing|blinky=flashing|flashy=flashing|flicker=flicker
blip=blip|pulse=flash|pulses=flashes|pulsing=flashing|pulsed=flashed
strobe=flash|strobes=flashes|strobing=flashing
goin=going|doin=doing|gona=going to|tho=though|thru=through|yr=your|ur=your
lightening=lightning|lightining=lightning|lightnin=lightning|cuz=because
gray=grey|color=colour|colors=colours|orangey=orange|orangish=orange
reddish=red|yellowish=yellow|greenish=green|bluish=blue|greens=greens
temp=temperature|temps=temperatures|tempreture=temperature|amb=ambient
pressostat=pressure switch|hps=high pressure switch|lps=low pressure switch
hp=hp|disch=discharge|hotgas=hot gas|suct=suction|evap=evaporator
cond=condenser|cap=capacitor|caps=capacitors|capasitor=capacitor
tech=technician|techs=technicians|breakr=breaker|braker=breaker|cb=breaker
mcb=breaker|fuseboard=breaker|disco=disconnect|isolater=isolator
conn=connector|plugs=plugs|mtr=motor|mot=motor|multimeter=meter|dmm=meter
multi-meter=meter|manifold=gauges|gages=gauges|gage=gauge|guages=gauges
guage=gauge|serv=service|rev=rev|pls=please|plz=please|thx=thanks|ty=thanks
wat=what|wot=what|wut=what|nxt=next|yday=yesterday|yest=yesterday
"""

_UNITS = """
volts=v|volt=v|vac=v ac|vdc=v dc|vlt=v|vlts=v|amps=amp|amperes=amp|ampere=amp
kilohm=kohm|kilohms=kohm|kohms=kohm|kiloohm=kohm|kiloohms=kohm|kω=kohm|ks=kohm
megohm=megohm|megohms=megohm|megaohm=megohm|megaohms=megohm|meg=megohm|megs=megohm
mω=megohm|mohm=megohm|ohms=ohm|ω=ohm|psig=psi|lbs=psi|pounds=psi
mins=min|minute=min|minutes=min|minuts=min|mintues=min|minits=min|minit=min
secs=sec|seconds=sec|hr=hour|hrs=hour|hours=hour|days=day|weeks=week
months=month|years=year|fahrenheit=f|farenheit=f|celsius=c|celcius=c|centigrade=c
degf=f|degc=c|deg=deg|degs=deg|degree=deg|degrees=deg|microfarad=uf|microfarads=uf
mfd=uf|μf=uf|kpa=kpa|mpa=mpa|hertz=hz|percent=%
"""


def _table(*texts: str) -> dict[str, tuple[str, ...]]:
    rows = [row for text in texts for row in text.replace("\n", "|").split("|")]
    pairs = [row.strip().split("=") for row in rows if row.strip()]
    return {left: tuple(right.split()) for left, right in pairs}


WORDS: dict[str, tuple[str, ...]] = _table(_CONTRACTIONS, _SHORT_FORMS, _UNITS)
"""Lower-case word without apostrophe -> the word or words used in patterns."""

UNIT_SUFFIXES = frozenset(
    words("""
    k kohm kohms v vac vdc f c a amp amps ma psi psig min mins sec secs s h hr hrs hz
    m meg mohm uf mfd ohm ohms x kpa mpa bar ω kω mω μf am pm % deg degf degc
    flashes blinks
    """)
)
"""What may be glued to a number: ``46k``, ``250v``, ``70F``, ``3x``."""

WELL_SPELLED = tuple(
    words("""
    compressor thermostat flashing flashes outdoor indoor condenser breaker discharge
    suction pressure defrost sensor resistance capacitor capacitors terminals
    evaporator generator yesterday customer technician maintenance unplugged
    disconnect connector refrigerant yellow orange running started stopped steady
    tripped tripping starting stopping cooling heating winding windings screwdriver
    protection licensed certified homeowner freezing frosted burning lightning
    display gauges locked supply voltage transformer installed replaced swapped
    """)
)
"""Words whose misspelling by one letter is put right (six letters or more)."""
SHORTEST_MENDED = 6
