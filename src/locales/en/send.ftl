# Sending a job, opening a link, answering what was asked.

send-button = Send this
send-heading = Send this job
send-back-heading = Send it back
send-about = All of it is packed into a link. No server keeps it: whoever has the link has the answers.
send-contains = What the link holds
send-tick-name = Put in the name of the job
send-tick-place = Put in the address
send-tick-notes = Put in the notes
send-tick-offer = Put in the offer and its prices
send-asked = Questions to answer
send-asks = { $count ->
    [0] Ask nothing
    [one] Ask 1 question
   *[other] Ask { $count } questions
}
send-asks-about = Whoever opens the link is taken through these, one after another. We picked those that can change the answer most.
send-asks-more = Ask something else
send-on-site = best on site
send-share = Share …
send-copy = Copy the link
send-mail = E-mail
send-sms = Text message
send-copied = The link is copied.
send-not-copied = The browser does not let the page copy. Mark the link below and copy it by hand.
send-shared = Shared.
send-not-shared = Nothing was shared.
send-link = The link
send-length = { $count } characters long
send-show-code = Show a square code
send-hide-code = Hide the square code
send-code-label = Square code with the link in it
send-code-larger = Show it large
send-code-smaller = Show it small
send-code-about = Point the camera of a phone at it. The phone needs no signal to read it.
send-code-long = This link is too long for a square code. Leave the notes out, or send it another way.
send-from-file = You opened this page from a file. A link from here works only where the same file lies. Send the file too. There, use “Open a link that was sent” in the list of jobs.
send-words = Please open this link and answer the questions about your water heater. It takes about two minutes. Then send it back.
    .subject = A few questions about your water heater
send-words-back = Here are the answers about the water heater.
    .subject = Answers about the water heater

over-all = See every line of it

open-heading = Somebody sent you a job
open-back = Answers came back
open-sent = Sent { $when }
open-refused = This link cannot be opened
open-untouched = Nothing here has changed.
open-untouched-yet = Nothing changes before you press the button below.
open-where = What to do with it
open-as-new = Open it as a new job
open-new = Open as a new job
open-merge = Merge into that job
open-not = Not now

merge-differences = { $count ->
    [0] It says nothing that is not here already.
    [one] It says one thing that is not here, or that is different here.
   *[other] It says { $count } things that are not here, or that are different here.
}
merge-about = Pick one of each. What was measured comes first. What you do not pick is set aside in the job, not lost.
merge-theirs = In the link or file
merge-ours = Here
merge-new = { $count ->
    [one] One thing is new
   *[other] { $count } things are new
}
merge-nothing = Nothing
merge-done = The two jobs are merged. What was not picked is set aside in the job.

asked-step = Question { $step } of { $of }
asked-offer = Prices from your installer are in already:
asked-nobody = Nobody has asked you anything here.
asked-done = Thank you. Here is the answer:
asked-all = Answer more questions
asked-send-about = One tap, and whoever asked has your answers.

job-asked = { $open ->
    [0] All that was asked is answered.
   *[other] Asked: { $count }. Still open: { $open }.
}
job-to-asked = See the questions

jobs-save-all = Save all to a file
jobs-save = Save to a file
jobs-load = Load jobs from a file
jobs-paste = Open a link that was sent
jobs-paste-here = Paste the link, or the whole message
jobs-paste-open = Open it

bring-heading = Jobs from a file
bring-refused = This file was not taken
bring-unreadable = It cannot be read. It is no file of jobs from this page, or it is too large.
bring-untouched = Your jobs are as they were.
bring-found = New here: { $new }. Here, but different: { $other }. The same as here: { $same }.
bring-faults = Some of the file cannot be read:
bring-fault = { $field }: { $why }
bring-one-new = Add { $name }, changed { $when }
bring-one-other = Merge { $name }, changed { $when }
bring-more = { $count } more jobs are not listed here. They are taken too.
bring-take = Take over what is ticked
bring-done = { $count ->
    [one] One job was taken over.
   *[other] { $count } jobs were taken over.
}
bring-no-room = { $count ->
    [one] There is no room left. Only one job was taken over.
   *[other] There is no room left. Only { $count } jobs were taken over.
}

# What was done at the work, beside another copy of the job
done-name = Done at the work
done-count = { $count ->
    [one] { $count } thing noted
   *[other] { $count } things noted
}
