# Why an answer is not taken. `$question` is the question's own words.

refusal-out-of-range = { $given } is outside what this question takes. Please give a value from { $low } to { $high }.
refusal-not-a-number = Please write a number here, such as 12 or 7.5.
refusal-not-an-option = Please choose one of the answers on the list.

# Files: why a record is not taken. The field's name stands before the sentence.
refusal-too-long = This record is too long. The most that is read is { $most } KiB.
refusal-not-json = This is not JSON. The reading stopped at line { $line }, column { $column }.
refusal-not-text = This is not plain text (UTF-8).
refusal-wanted = Here stands { $given }. { $wanted }
refusal-wanted-object = An object in braces belongs here.
refusal-wanted-name = A short text of at most 200 letters belongs here.
refusal-wanted-seed = A whole number from 0 belongs here.
refusal-wanted-number = A number belongs here.
refusal-wanted-quantity = A number belongs here, or an object with "value" and "unit".
refusal-wanted-code = One of the codes on the list belongs here, as text.
refusal-wanted-unit = The code of a unit belongs here, as text.
refusal-missing = This is missing.
refusal-version = This program reads version { $known }. Here stands { $given }.
refusal-unknown = Nothing is called "{ $given }" here.
refusal-unknown-near = Nothing is called "{ $given }" here. Did you mean "{ $near }"?
refusal-twice = This is given twice.
refusal-needs-unit = The number { $given } needs a unit. Write it with one of these: { $units }.
refusal-wrong-unit = The unit "{ $given }" will not do. Use one of these: { $units }.
refusal-none-of = Here stands "{ $given }". Use one of these: { $options }.
refusal-wanted-list = A list in square brackets belongs here.
refusal-wanted-true-false = Here belongs true or false.
refusal-wanted-short-text = A short text of at most 60 letters belongs here.
refusal-too-many = There are too many here. The most that are read is { $most }.
refusal-long-text = This text is too long. The first { $most } letters are kept here.
refusal-wanted-text = Text belongs here.
