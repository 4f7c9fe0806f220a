# The page itself: titles, buttons, notices, charts.

page-name = Tankful
page-skip = Skip to the page
page-title-start = Tankful: what to do about an old water heater
page-title-section = Tankful: questions
page-title-result = Tankful: your answer
page-title-jobs = Tankful: jobs

# The head.
page-units = Units
page-units-us = US
page-units-si = SI
page-theme = Colors
page-theme-auto = Auto
page-theme-light = Light
page-theme-dark = Dark

# The way through the sections.
page-way = All the steps
page-way-result = Your answer
page-way-tally = { $answered } of { $all }
page-step = Step { $step } of { $of }
page-steps = Back and next
page-next = Next
page-next-result = See your answer
page-back = Back
page-more-detail = More detail ({ $count } { $count ->
    [one] question
   *[other] questions
})
page-less-detail = Less detail

# The way in.
page-start-heading = Old water heater? See what to do.
page-start-lead = Keep it, buy the same again, or change to a heat pump water heater. Tell us what you know. We work out a whole year in your house, hour by hour.
page-start-begin = Start
page-start-go-on = Go on
page-start-see-typical = See a typical house first
page-start-see-yours = See your answer
page-start-promise-time = Two minutes is enough. More detail makes the answer surer.
page-start-promise-unknown = “I don’t know” is fine for every question. We then take a usual value and show you which.
page-start-promise-private = No account, no server. Your answers stay on this device.
page-start-promise-honest = We sell nothing. “Keep it” and “the same again” can win.

# A question.
page-unknown = I don’t know
page-find = How to find out
page-find-moves = It moves: { $what }.
page-taken = We take: { $value }.
page-measured = I measured this, or read it off the thing itself
page-step-up = More
page-step-down = Less
page-place-type = Type a city or state
page-place-found = { $count ->
    [0] No listed place fits. Try the nearest large city.
    [one] One place fits.
   *[other] { $count } places fit.
}

# The verdict.
page-verdict = The answer so far
page-verdict-typical = For a typical house:
page-verdict-basis = { $count ->
    [one] From one answer, and usual values:
   *[other] From { $count } answers, and usual values:
}
page-verdict-first = A first look, still being refined:
page-verdict-wait = Working it out …
page-part-wait = Opening …
page-part-missing = This part of the page could not be fetched. It comes from the same place as the page itself. Look for a signal, then try again.
page-part-again = Try again
page-verdict-more = See why
page-verdict-change = Change answers
page-computing = Working out your answer
page-figure-saves = Saves { $amount } a year
page-figure-costs-more = Costs { $amount } more a year
page-figure-runs = Costs { $amount } a year to run
page-figure-payback = Paid back in { $years } years
page-figure-payback-at-once = Costs no more from the start
page-figure-payback-never = Not paid back in time

# Notices.
page-notice-dismiss = OK
page-notice-download = Download it
page-notice-put-back = Put them back
page-notice-storage-forbidden = This browser does not let the page keep your answers. Everything works, but they are gone when you close the page. You can save them to a file below.
page-notice-storage-full = This browser has no room left to keep your answers. Everything works, but your last changes are gone when you close the page. You can save them to a file below.
page-notice-storage-blocked = Something else lies where your answers belong, and there is no room to move it. Your answers are not kept. You can save them to a file below.
page-notice-damaged = What was kept here could not be read. We set it aside and started afresh. You can download it.
page-notice-damaged-part = Some of the answers kept here could not be read. We kept the good ones and set the rest aside. You can download it all.
page-notice-other-tab = Your answers changed in another tab. This page now shows the newer ones.
page-notice-started-over = All answers are cleared.
page-notice-no-worker = This browser does not let the page work in the background. It works here instead, a little slower.
page-notice-file-read = { $count ->
    [one] One answer was read from the file.
   *[other] { $count } answers were read from the file.
}
page-notice-file-fault = That file was not taken: { $why } Your answers are as they were.
page-notice-file-bad = That file could not be read. It is not a file of answers from this page, or it is too large. Your answers are as they were.

# Keeping answers.
page-kept = Your answers
page-kept-about = They are kept in this browser only. Save them to a file to keep a copy or to send them to your installer.
page-kept-save = Save to a file
page-kept-load = Load from a file
page-kept-clear = Start over
page-foot-private = Nothing you enter leaves this device.
page-foot-code = Local code and licensed trades decide what may be done. This page does not.
page-caution-local = This page gives advice, not permission. Water, gas, flue and wiring can hurt people. Local code and licensed trades decide.

# The working.
page-working-show = Show the working
page-working-close = Close
page-working-none = There is no working for this figure.
page-working-inputs = What went in
page-working-source = Source:
page-working-hint = Tap a figure to see how it was worked out. The drop beside it shows what it rests on.

# The answer.
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

# Two heaters side by side.
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

# Charts.
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

# All heaters in one table.
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
page-table-payback-at-once = from the start
page-table-payback-years = in { $years } years
page-table-payback-never = not in time
page-table-carries = stays warm
page-table-runs-cold = turns cold
page-runners = The others, and what they would need
page-runner-dearer = { $heater }: { $amount } dearer in all
page-runner-cheaper = { $heater }: { $amount } cheaper in all

# Whether it fits.
