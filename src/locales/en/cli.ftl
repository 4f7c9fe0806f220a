# The headless command.

cli-about = Advice on an old water heater: keep it, put in the same again, or change to a heat pump.
cli-after = Everything is computed here. Nothing is sent anywhere. Local code and licensed trades decide what may be done.
cli-advise = Read cases as JSON and write the advice
cli-advise-after =
    The input is one case over any number of lines, or JSON Lines: one case a line.
    The output is one line of JSON for each case, in the same order. A bad record
    becomes a line with "line" and "error", is told of on standard error, and does
    not stop the rest. A record is at most 1 MiB long.

    Exit code: 0 all good; 1 a record was bad, or there was none; 2 wrong usage,
    or the input could not be read.

    Try it: tankful example | tankful advise --text -
cli-rate = Put heaters through the rating test and write their scores
cli-calibrate = Find the models that score given labels
cli-heater-after =
    The input is one heater, or one a line, as JSON. A heater is given by its label, or for
    "rate" by its model, such as "calibrate" writes it. What a label leaves out is taken as
    usual for its kind. It is then named as assumed.

    Exit code: 0 all good; 1 a record was bad, or there was none; 2 wrong usage,
    or the input could not be read.
cli-file = The file to read, or - for standard input
cli-text = Write plain text for people, not JSON
cli-units = The units that texts are written in
cli-rate-series = Add the test’s day, step by step: draws, outlet, layers and power
cli-series = Add the raw series: each day of the year, and each step of the busiest morning
cli-futures = Draw so many futures of each case: how sure the advice is, and what would change it
cli-seed = Seed of the futures
cli-schema = Write the JSON Schema of a case
cli-questions = Write the list of questions, with their ranges and defaults
cli-example = Write an example case of an invented household
cli-schema-jobs = The schema of a file of jobs, as the page writes and reads it
cli-example-offer = With an invented installer's offer of three heaters
cli-example-heater-50 = Example 50 (invented)
cli-example-heater-65 = Example 65 (invented)
cli-example-heater-80 = Example 80 (invented)
cli-example-name = Invented example: four people, an old electric tank in a basement

cli-range = From { $low } to { $high }.
cli-place = The code of a listed place, such as us-ma-boston.
cli-default = If unknown: { $value }.

cli-not-offered = The example household is not offered the heater { $heater }.
cli-io = Reading or writing failed: { $detail }
cli-unreadable = { $file } cannot be read: { $detail }
cli-no-records = There is no case in the input.
cli-bad-records = { $bad ->
    [one] 1 record of { $all } was bad. What is wrong stands in the output.
   *[other] { $bad } records of { $all } were bad. What is wrong stands in the output.
}
cli-at-line = Line { $line }: { $text }
cli-at-field = Line { $line }, { $field }: { $text }

# The progress bar's layout: indicatif's own place holders in double braces.
cli-progress = {"{"}bar:30{"}"} {"{"}msg{"}"} cases, {"{"}eta{"}"} to go
cli-progress-endless = {"{"}spinner{"}"} {"{"}msg{"}"} cases, {"{"}elapsed{"}"}

cli-plan = Write what to load and what to do in which order, for each case
cli-plan-after =
    The input is that of "advise". The plan is for the heater that is advised, or for the one
    named by "--heater". With "--csv" the output is the list of parts for a spreadsheet.

    Try it: tankful example | tankful plan --text -
cli-plan-csv = Write the list of parts as comma-separated values
cli-plan-heater = The heater to plan for, by its code, such as heat_pump_50
cli-no-such-heater = This case has no heater { $heater }.

# handover, calendar
cli-handover = What comes after the work: the page for the household, dates of care, what each start-up reading should be.
cli-calendar = The dates of care as a calendar file (iCalendar)
cli-after-after = Takes a case, a case a line, or a file of jobs. A job brings its heater, its date and its readings. For a case, say them here.
cli-heater = Code of the heater that was put in. Without it, the job's own, or the one advised
cli-date = The day it was put in, for what has no such day
cli-bad-date = --date takes a day as in 2026-11-25.
cli-no-date = On which day was it put in? Say it with --date, as in 2026-11-25.
cli-no-heater = That heater is not among those of this house.
