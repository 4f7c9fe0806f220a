# What lies ahead: how sure the advice is, what would change it, life left, prices by the hour, CO₂.

sure-name = How sure, and when to act
sure-about = What nobody has answered yet, prices and the life of heaters can turn out in many ways. Here they are tried.
sure-wait = Working out what lies ahead …

sure-life = The heater you have: how long still?
sure-life-chance = Chance that it fails within { $years }: { $chance } (from { $low } to { $high }).
sure-life-emergency = If it fails, that costs about { $total } more than to replace it in time (from { $low } to { $high }).
sure-life-rush = Of that, { $amount } is because nobody can wait: a weekend, and no second quote.
sure-life-damage = Of that, { $amount } is for what water can do, by how likely a leak is.
sure-life-worse = Of that, { $amount } is for the wrong choice: in a hurry it is mostly { $same }. With time it would be { $heater }.
sure-life-source = How long tanks last is common practice, no source. The range shows how far it may be off.
sure-moment-now = Replace it now: each year of waiting costs more than it saves.
sure-moment-soon = Replace it within the year: after that, waiting costs more than it saves.
sure-moment-years = If it lives, replace it in about { $years }. Until then each year of waiting saves more than it risks.
sure-moment-late = By money alone it can run until it fails: that costs less than what waiting saves.
sure-moment-year = It costs { $keep } a year to run. With its price spread over its life, { $heater } costs { $planned } a year.
sure-waiting-costs = { $years ->
    [one] To wait a year costs about { $amount } more than to replace it now.
   *[other] To wait up to { $years } years costs about { $amount } more than to replace it now.
}
sure-waiting-saves = { $years ->
    [one] To wait a year saves about { $amount }, with the risk counted in.
   *[other] To wait up to { $years } years saves about { $amount }, with the risk counted in.
}

sure-tariff = Power that costs more at some hours
sure-tariff-flat = Your power costs the same at all hours. If it does not, say so: then the advice counts by the hour, and you see what heating at cheap hours saves.
sure-tariff-cost = { $heater }: its power costs { $amount } a year by your hours, and { $flat } at one price. { $share } of it is used at peak hours.
sure-tariff-fuel = { $heater }: it burns fuel, so the hour hardly matters.
sure-tariff-verdict = The verdict counts with your prices by the hour, and with heaters as they run by themselves. What heating before the peak saves comes on top. Hours are those of the clock on the wall, in summer too.
sure-schedule-none = There is no peak to stay away from.
sure-schedule-saves = Heat before the peak and rest during it: that saves about { $amount } a year. Then { $share } is used at peak hours.
sure-schedule-raised = Before the peak it heats up to { $to }. The mixing valve keeps the taps as they are: have it checked, or water can scald.
sure-schedule-held = Before the peak it heats up to its usual setting, not above. During the peak it heats only if the top of the tank gets too cool.
sure-schedule-warm = The busiest morning stays as warm as it is without.
sure-schedule-little = To heat at cheap hours would save too little to be worth it.
sure-schedule-cold = To heat at cheap hours would save about { $amount } a year, but some showers would run colder. So it is not advised.

sure-emissions = Carbon dioxide over the years
sure-emission = { $heater }: { $first } kg in the first year, { $all } t over { $years } years (from { $low } to { $high }).
sure-emissions-about = The range comes from the power plants: what they emit at the hour, and how that will change.
sure-emissions-chart = Carbon dioxide added up, in tonnes (t)
sure-emissions-band = Range with the grid
sure-emissions-range = Range, kg in the year
sure-emissions-year = Year
sure-range = { $low } to { $high }
sure-waiting = What waiting costs
sure-waiting-legend = Cost against replacing now
sure-waiting-year = Years of waiting
sure-waiting-rises = It costs more from the first year on.
sure-waiting-falls = It is lowest after { $years ->
    [one] a year
   *[other] { $years } years
} of waiting.
sure-hours = Power used by hour of the day, in kWh
sure-hours-hour = From hour
sure-hours-usual = As it runs now
sure-hours-schedule = Heated before the peak
sure-hours-reading = { $heater }: { $before } of its power falls in the peak as it runs now, and { $after } if it heats before.

sure-futures = How sure it is
sure-drawing = Trying out how it could turn out …
sure-drawn = { $count } ways it could turn out were tried.
sure-narrower = Before your last answer it was { $low } to { $high }. That range is now narrower by { $share }.
sure-wider = Before your last answer it was { $low } to { $high }. That range is now wider by { $share }.
sure-as-wide = Before your last answer it was { $low } to { $high }. That range is as wide as it was.
sure-stop = Stop trying
sure-go-on = Go on trying
sure-cheapest = { $heater } costs least in { $chance } of 100 ways it could turn out.
sure-cheapest-kind = { $heater } costs least in { $chance } of 100 ways it could turn out. It or another of its kind does in { $alike } of 100.
sure-pays = It pays back before it wears out in { $chance } of 100.
sure-worst = In the worst 5 of 100 it costs over { $amount } more than the best choice would have.
sure-each = Each heater
sure-bands = What is spent over the years
sure-band-before = The same before your last answer
sure-assumed-about = Nobody has said this yet. What could change the choice comes first, then what moves it most.
sure-band = In 8 of 10 ways it could turn out
sure-bands-reading = After { $years } years, { $heater } has cost { $low } to { $high } in 8 of 10 ways, and { $rival } { $rival-low } to { $rival-high }.
sure-money-range = { $low } to { $high }
sure-changes = What would change it
sure-changes-about = What is still open, with what moves the choice most first: { $heater } against { $rival }.
sure-change-share = It has a part in { $share } of the doubt.
sure-change-flips = A likely answer would turn the choice to: { $heater }.
sure-change-even = Both cost the same at { $value }: below that take { $below }, above it { $above }.
sure-future-lives = How long tanks last
sure-future-prices = Where prices go
sure-future-household = Who moves in or out
sure-future-weather = The weather of the years
sure-change-moves = It can move the gap between the two by about { $amount }.
sure-map = Which heater costs least
sure-map-across = Across:
sure-map-up = Up:
sure-map-now = As it stands
sure-map-corner = { $y } / { $x }
sure-map-reading = { $x } { $across }. { $y } { $up }. There { $heater } ({ $letter }) costs least.
