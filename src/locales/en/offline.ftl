# The page with no signal, and newer releases of it.

offline-preparing = Getting this page ready for use with no signal…
offline-ready = This page is ready for use with no signal.
offline-file = This page is one file on your device. It needs no signal.
offline-none = This browser cannot keep the page for use with no signal. A private window may be the reason.
offline-unsafe = This page is not kept for use with no signal: its address must begin with https for that.
offline-refused = This browser does not let the page keep itself for use with no signal. It works while you have it open.
offline-failed = This page could not be kept for use with no signal: a download broke off. It is tried again when you next open it.
offline-full = This page could not be kept for use with no signal: this device has no room left for it.
offline-notice-newer = A newer version of this page is ready. Nothing you typed is lost when you change to it.
offline-notice-other-tab = Another tab has changed to a newer version of this page. This one still works as it is. Nothing you typed is lost when you change to it here too.
offline-notice-unkept = Your answers are not kept in this browser, and changing to the newer version now would lose them. Save them to a file below first. The newer version starts by itself when every tab of this page has been closed.
offline-notice-use = Use the newer version
offline-draft = This was typed here before and is no answer yet. Please look at it again.
