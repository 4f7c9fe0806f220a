# Links that carry a job: why one cannot be opened, what it held that is left out, what one contains.

link-not-ours = There is no job in this link.
link-newer = This link was made by a newer version of this page (form { $version }). Load this page again while you are online. Then open the link once more.
link-cut-off = The end of this link is missing. Some mail programs cut long links. Ask for it again, or copy the whole of it.
link-damaged = Some letters of this link have changed on the way. Ask for it again.
link-too-long = This link is far too long to be one of ours.

link-dropped-answer = Left out, since the value cannot be right: { $question }
link-dropped-offer = Part of the offer was left out, since its values cannot be right.
link-dropped-text = A text was left out, since it cannot be read.
link-dropped-unknown = Part of it was left out, since only a newer version of this page knows it. Load this page again while you are online.

link-has-answers = { $answers ->
        [one] 1 answer
       *[other] { $answers } answers
    }, { $measured } of them measured
link-has-town = The listed town nearest to the house: { $town }
link-has-offer = The offer with its prices. Heaters: { $count }. { $names }
link-has-asked = { $count ->
        [one] 1 question
       *[other] { $count } questions
    } to answer
link-has-text = { $what }: { $text }
link-leaves-out = Not in the link: { $what }
link-what-name = the name of the job
link-what-place = the address
link-what-notes = the notes
link-what-done = what was done at the work: parts, steps, readings. A file of the job has it
