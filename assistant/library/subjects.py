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
dewpoint wetbulb drybulb psychrometric psychrometer hygrometer humidistat anemometer
manometer lonworks knx zigbee alexa gwp odp kwh
cop hepa ioniser ionizer asbestos legionella subcooled warranties
guaranteed prices cost costs quote quotation invoices
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
boilers furnaces burners cooker cookers hobs ovens stoves toasters kettles grill
barbecue bbq griddle fryer fryers dishwashers fridges refrigerators freezers coldroom
coldrooms chillers blastchiller tumble washer hoover ironing mixer blender juicer
immersion geyser faucet bathtub urinal radiators underfloor flues chimneys woodburner
pellet pellets coal oilfired kerosene lpg turbines cctv burglar intruder keyholder
turnstile sprinklers elevators escalators dumbwaiter portcullis pools spa hottub
aquarium incubator lathe bandsaw conveyor chandelier lampshade streetlight sandblaster
pressurewasher strimmer hedgecutter mowers lawnmower leafblower tractor harvester cars
vans trucks lorries pickups motorcycle scooter bicycle bicycles bikes gearboxes
brakepads clutches sparkplug sparkplugs carburettor carburetor dashboard odometer
speedometer mileage mpg windshield wiper wipers bumper airbag seatbelt mot rego
roadworthy satnav gps roundabout motorways freeway highway toll airline airlines
airports luggage suitcase cruise railway taxi uber helicopter rocket spaceship
submarine sailing kayak canoe iphone android facebook instagram youtube tiktok google
internet broadband browser spreadsheet excel powerpoint photocopier stapler headphones
speakers bluray dvd playstation xbox netflix spotify podcast podcasts username login
logout captcha virus spam antivirus mortgages savings overdraft creditcard inflation
dividend dividends stocks payslip payroll overtime invoicing gst coupon voucher lawyer
solicitor court jury burglary crime prison eviction divorce custody probate tomato
tomatoes potato potatoes onion onions garlic carrot carrots lettuce salad rice noodles
curry burger burgers sandwich sandwiches butter milk yoghurt yogurt honey marmalade
cereal porridge pastry pudding dessert cookie cookies scone scones omelette bacon
sausage sausages ham beef pork lamb turkey salmon tuna prawn prawns lobster seafood
mushroom mushrooms banana bananas apples pears grape grapes lemon lemons strawberry
strawberries vodka gin rum cider cocktail cocktails lager barista espresso latte
cappuccino marinade gravy frying simmer knead grated tablespoon teaspoon armchair
duvet bookshelf wallpaper vase fertiliser fertilizer compost mulch roses tulip tulips
seedlings orchard vineyard knitting crochet sewing embroidery quilting origami pottery
watercolour watercolor footballer quarterback goalkeeper referee offside touchdown
homerun wicket marathon swimming swimmer diver skiing snowboard skateboard surfing
surfboard yoga pilates treadmill boxing wrestling judo karate darts snooker billiards
bowling poker blackjack roulette bingo singers album albums lyrics melody chord chords
saxophone trumpet flute ukulele orchestra opera ballet sculptor comedian comedy
cartoon cartoons anime superhero wizard dragons vampire zombie zombies princess
algebra geometry calculus trigonometry equation equations grammar vocabulary haiku
limerick sonnet philosophy psychology sociology theology bible prayer emperor empire
pharaoh pyramid pyramids viking vikings napoleon senator senate congress mayor
ministers london paris berlin madrid tokyo beijing sydney melbourne toronto vancouver
chicago boston texas california france germany italy spain japan china india brazil
mexico africa asia europe russia ireland scotland aspirin paracetamol ibuprofen
antibiotic antibiotics vaccine vaccination vitamin vitamins asthma allergy allergies
diabetes cancer flu covid rash toothache dentistry optician ankle stomach kidney liver
lungs muscles calories carbs vegan vegetarian makeup lipstick shampoo hairstyle tattoo
necklace earrings bracelet kittens puppies goldfish parrot horses cows sheepdog goat
goats hen elephant elephants lion lions tiger tigers wolf wolves giraffe zebra monkey
monkeys gorilla whale whales dolphin dolphins shark sharks penguin penguins eagle owl
butterfly butterflies volcano volcanoes tsunami continent continents everest jupiter
saturn galaxy eclipse comet asteroid astronaut horoscope zodiac bride groom bridesmaid
nephew niece uncle aunt nappy nappies forklift wholesaler wholesalers callout hairdryer
pub pubs tomorrow forecast cassette cassettes twin twins humidifier
humidifiers dehumidifier dehumidifiers outboard toilet toilets cistern paper flights
footy greasing grease
"""

FIGURES: frozenset[str] = frozenset(_FIGURES.split())
"""Figures and parts of the trade that are answered where they are named, or not."""

ELSEWHERE: frozenset[str] = frozenset(_ELSEWHERE.split())
"""Words of other equipment, of work these manuals may leave out, of everyday life."""
