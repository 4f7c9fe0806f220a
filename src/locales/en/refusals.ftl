# Why an answer is not taken. `$question` is the question's own words.

refusal-out-of-range = { $given } is outside what this question takes. Please give a value from { $low } to { $high }.
refusal-not-a-number = Please write a number here, such as 12 or 7.5.
refusal-not-an-option = Please choose one of the answers on the list.
