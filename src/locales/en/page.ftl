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
page-working-close = Close
