"""Subjects a question may be about, as data: trade figures, and everything else.

A question for the superheat is answered by a page that names it or by none, so a
figure of the trade that stands in no passage is as good as a code that stands in
none. Words of other equipment and of everyday life speak against an answer unless
the literature has them too. Left out on purpose: words that come up around a unit
(tree, carpet, boat, rain) and words that have a second meaning on one (book,
history, present, match).
"""

from __future__ import annotations

_FIGURES = """
superheat superheating subcooling subcool enthalpy microfarad microfarads mfd
contactor economiser economizer viscosity glycol firmware wifi bluetooth modbus
bacnet cfm btu tonnage seer eer scop micron microns drier sightglass
warranty guarantee price invoice
"""

_ELSEWHERE = """
oil suction vacuum nitrogen crankcase accumulator receiver capillary humidity
dehumidify static velocity ductwork duct ducts ducted damper dampers grille louvre
economiser heatpump geothermal ptac vrf vrv multi rattler evaporative swamp absorption
furnace boiler burner pilot flame igniter thermocouple flue chimney fireplace woodstove
radiator towel fridge freezer icemaker dishwasher dryer oven stove hob toaster kettle
microwave chiller rooftop walkin harvest harvests cube cubes bottle jacuzzi sauna
elevator escalator sprinkler septic borehole solar television telly tv
router modem printer laptop tablet keyboard phone mobile app password email website
car van truck lorry pickup tyre tyres tire tires engine gearbox clutch alternator
exhaust windscreen headlight motorbike bike bus train tram plane flight airport
ticket tickets timetable traffic motorway petrol diesel
coffee tea beer wine whisky bread sourdough dough flour yeast recipe cook cooking bake
baking dinner lunch breakfast supper chocolate pizza pasta sauce sugar cheese meat
steak chicken egg eggs soup cake pancake pancakes biscuit vegetable vegetables fruit
football soccer rugby cricket tennis golf hockey basketball baseball league cup team
won win winner player race olympics fishing
song songs music guitar piano violin drum band singer concert film movie actor actress
cinema theatre novel poem poetry joke jokes riddle chess crossword
birthday wedding anniversary christmas easter gift presents party
holiday vacation passport visa tourist
tax taxes bank loan mortgage salary wage wages pension insurance lottery euro euros
dollar dollars shares crypto bitcoin
cat kitten puppy horse cow sheep vet
shirt shirts shoe shoes boot boots lace laces trousers jeans jacket dress sock socks
laundry stain
doctor headache fever pill medicine tooth dentist pregnant baby daughter son wife
husband girlfriend boyfriend haircut diet gym
sky moon planet stars universe dinosaur
president minister election parliament king queen war capital population
language finnish french german spanish italian swedish english translate spell
homework teacher exam essay university

lawn mower chainsaw

"""

FIGURES: frozenset[str] = frozenset(_FIGURES.split())
"""Figures and parts of the trade that are answered where they are named, or not."""

ELSEWHERE: frozenset[str] = frozenset(_ELSEWHERE.split())
"""Words of other equipment, of work these manuals may leave out, of everyday life."""
