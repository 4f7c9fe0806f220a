# The advice in full: figures, tanks, charts, comparison, findings.

page-working-show = Show the working
page-working-none = There is no working for this figure.
page-working-inputs = What went in
page-working-source = Source:
page-working-hint = Tap a figure to see how it was worked out. The drop beside it shows what it rests on.
page-tile-saves = Saved a year
page-tile-costs-more = More to run, a year
page-tile-running = To run, a year
page-tile-upfront = To pay at the start
page-tile-payback = Paid back
page-tile-total = All costs over { $years } { $years ->
    [one] year
   *[other] years
}, in today’s money
page-reasons = Why
page-settle = Settle this first
page-settle-more = { $count ->
    [one] One more thing to settle
   *[other] { $count } more things to settle
}
page-settle-nothing = Nothing is left open that could change this answer.
page-assumed = What this takes for granted
page-assumed-about = Nobody has told us these yet, so usual values stand in. Tap one to put in your own.
page-assumed-none = You have answered all the main questions.
page-assumed-others = { $count ->
    [one] One further detail
   *[other] { $count } further details
}
page-cautions = Take care
page-print = Print this
page-pair = Side by side
page-pair-chosen = This one
page-pair-beside = Beside it
page-nothing = –
page-range = { $low } to { $high }
page-clock = { $hour }:{ $minute }
page-tank = The busiest morning
page-tank-about = The coldest tap water of the year, and everyone wants a shower. Play it and watch the hot water go.
page-tank-play = Play
page-tank-pause = Pause
page-tank-scrub = Time of the morning
page-tank-both = Two tanks in section: { $heater }, and { $rival }. What they show is written under each.
page-tank-scale = water in the tank and at the shower
page-tank-hot = { $share } of the tank is hot.
page-tank-tap = The shower gets { $warmth }.
page-tank-tap-closed = Nobody is using hot water.
page-tank-heating = It heats with { $power }.
page-chart-table = The figures as a table
page-chart-month = Month
page-chart-morning = At the shower head
page-chart-morning-wanted = Wanted
page-chart-morning-in-use = Somebody uses hot water
page-chart-morning-use = Use
page-chart-morning-from = From
page-chart-morning-to = To
page-chart-morning-coolest = Coolest water: { $heater }
page-morning-carries = { $heater }: everyone has a warm shower.
page-morning-cold = { $heater }: the water turns cold at { $at }, and { $short } come too cold.
page-morning-short = { $heater }: some of the water comes too cold.
page-chart-money = Money spent over the years
page-chart-money-band = With low and high prices
page-chart-money-year = End of year
page-money-ends = After { $years } { $years ->
    [one] year
   *[other] years
}: { $heater } { $amount }, { $rival } { $rival-amount }.
page-money-level = They are level after { $year } years.
page-money-never-level = The two never come level.
page-chart-months = Energy, month by month
page-chart-months-electricity = Electricity: { $heater }
page-chart-months-fuel = Fuel: { $heater }
page-months-reading = { $heater }: { $energy } a year, the most in { $month }. { $rival }: { $rival-energy } a year.
page-chart-room = The room through the year
page-chart-room-with = With this heater
page-chart-room-undisturbed = Without a heat pump
page-chart-room-humidity = Humidity
page-room-reading = { $heater }: it cools the room by { $drop } at most, down to { $coldest } on the coldest day. It takes { $condensate } of water out of the air in a year.
page-room-no-heat-pump = { $heater }: it takes no heat from the room.
page-month-january = January
    .short = Jan
page-month-february = February
    .short = Feb
page-month-march = March
    .short = Mar
page-month-april = April
    .short = Apr
page-month-may = May
    .short = May
page-month-june = June
    .short = Jun
page-month-july = July
    .short = Jul
page-month-august = August
    .short = Aug
page-month-september = September
    .short = Sep
page-month-october = October
    .short = Oct
page-month-november = November
    .short = Nov
page-month-december = December
    .short = Dec
page-table = Every heater compared
page-table-about = On a small screen, swipe the table sideways. Tap a figure for its working.
page-table-heater = Heater
page-table-best = our pick
page-table-fits = Does it fit?
page-table-energy = Energy a year
page-table-running = Cost to run a year
page-table-upfront = At the start
page-table-net-present-cost = All costs, today’s money
page-table-payback = Paid back
page-table-first-hour = First-hour rating
page-table-morning = Busiest morning
page-table-emission = Carbon dioxide a year
page-table-carries = stays warm
page-table-runs-cold = turns cold
page-runners = The others, and what they would need
page-runner-dearer = { $heater }: { $amount } dearer in all
page-runner-cheaper = { $heater }: { $amount } cheaper in all
page-table-payback-at-once = from the start
page-table-payback-years = in { $years } years
page-table-payback-never = not in time

# The way to what comes after the work
result-after = After the work: start-up and handover
