# Household: who lives there and how they use hot water.
# Key: question. `.find`: how to find out. `.default`: why the value that stands in was taken (the value itself is shown before it).

q-adults = How many adults live here?
    .find = Count everyone aged 20 or over who sleeps here most nights.
    .default = A guess to start from.
q-teenagers = How many teenagers live here?
    .find = Count those aged 13 to 19. They often shower for longer.
    .default = A guess to start from.
q-children = How many children under 13 live here?
    .find = Count those who live here most of the week.
    .default = A guess to start from.
q-showers-in-a-row = How many showers run one after another in your busiest hour?
    .find = Think of a weekday morning, or the evening after sports. Count the showers taken back to back.
    .default = Half the people in the house, rounded up, and four at most. Common practice, no source.
q-runs-out-now = Do you run out of hot water now?
    .find = Does the last person in line get a cool shower at least once a month?
    .default = Most homes do not. A guess to start from.
q-runs-out-now-yes = Yes
q-runs-out-now-no = No
