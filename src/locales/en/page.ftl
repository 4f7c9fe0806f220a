# The page itself: titles, buttons, notices.
