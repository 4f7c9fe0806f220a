# The advice: verdict, reasons, runners-up, what to settle first.
