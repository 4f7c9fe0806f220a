# The list of jobs, and the open job.

jobs-link = All jobs
jobs-quiet-link = Several houses? Keep a list of jobs
jobs-heading = Jobs
jobs-lead = One line for each house. They are kept on this device only.
jobs-new = New job
jobs-search = Search name, place and notes
jobs-order = Sort by
jobs-order-changed = Last changed
jobs-order-name = Name
jobs-order-place = Place
jobs-order-answered = Fewest answers
jobs-archived = Show the jobs put away
jobs-count = { $count ->
    [one] One job
   *[other] { $count } jobs
}
jobs-none = No jobs yet. One is made as soon as you answer a question.
jobs-none-found = No job fits.
jobs-more = Show more
jobs-nameless = No name yet
jobs-here = Open now
jobs-state = { $answered } of { $all } answered. Changed { $when }.
jobs-no-verdict = Open it to see the answer.
jobs-unfold = More for { $name }
jobs-duplicate = Make a copy
jobs-archive = Put away
jobs-take-out = Take out again
jobs-delete = Delete
jobs-copy-of = { $name }, copy
jobs-notice-deleted = The job is deleted.
jobs-notice-put-back = Put it back
jobs-notice-gone = This job was deleted in another tab. It is still here. If you change it, it is kept again.
jobs-notice-newer = This job was kept by a newer version of the page. We left it as it is. Load the page again to get that version.
jobs-may-be-cleared = Your browser may clear these jobs when it runs short of room, or when you stay away for some weeks. Open each one now and then and save its answers to a file.
jobs-persist = Ask the browser to keep them
jobs-nearly-full = { $percent } % of the room for jobs is used. Save old jobs to a file, then delete them.

job-heading = This job
job-lead = A name and a place help you find it again. None of it is needed.
job-name = Name
job-place = Address, or how to find it
job-notes = Notes
job-questions = To the questions
job-log = Measured values
job-log-about = What you measure is noted here with its time.
job-log-empty = Nothing is measured yet.
job-who = Your name, beside what you measure
job-aside = Set aside
job-aside-unreadable = This could not be read. Noted { $when }.
job-aside-other-tab = Two tabs changed this at once. The older one, from { $when }:
job-aside-merged = Another value was taken on { $when }. This one stood here before:
