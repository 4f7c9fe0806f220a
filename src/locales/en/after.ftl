# After the work: the frame of the pages, and the report for print.

after-heading = After the work
after-lead = Note what you read at the start, hand the heater over, and see later whether it does what was said. All of it stays with the job.
after-heater = The heater that was put in
after-household = For the household
after-installed = Put in on
after-meter = Did it do what we said?
after-not-a-number = That is not a number.
after-startup = Start-up record
after-startup-about = Enter what you read. Each reading shows what it should be in this house, and what to look for if it is not. Leave out what you cannot measure.
after-to-job = The job
after-to-report = All of it for print
after-who = Who notes it

print-checked = What was checked
print-file = For the file
print-foot = Made from what was entered. The heater's own instructions come first. Local code and licensed trades decide.
print-household = Your new water heater
print-logged = { $what } { $value } ({ $when } { $who })
print-measured = Measured
print-parts = Parts
print-reading = Reading
print-steps = The work in order
print-who = When and who
