//! Places of Canada. For the columns and their sources see [`super::places`].

use super::places::{Place, places};

places! {
    /// Every place, sorted by identity.
    CA_PLACES:
    // identity           name                      reg. lat      lon    elev mean range dew sum., win. design
    "ca-ab-calgary",      "Calgary",               Ab, 51.05, -114.07, 1048.0,  4.6, 24.3,  7.5, -13.0, -26.5;
    "ca-ab-edmonton",     "Edmonton",              Ab, 53.55, -113.49,  645.0,  4.2, 28.4, 10.0, -14.0, -28.0;
    "ca-ab-fort-mcmurray","Fort McMurray",         Ab, 56.73, -111.38,  260.0,  1.2, 34.3, 10.0, -19.5, -34.5;
    "ca-bc-kelowna",      "Kelowna",               Bc, 49.89, -119.50,  344.0,  8.7, 22.6, 10.0,  -4.5, -14.0;
    "ca-bc-prince-george","Prince George",         Bc, 53.92, -122.75,  575.0,  4.3, 24.0,  8.5,  -9.5, -26.5;
    "ca-bc-vancouver",    "Vancouver",             Bc, 49.28, -123.12,   10.0, 10.6, 14.4, 12.5,   1.5,  -4.0;
    "ca-bc-victoria",     "Victoria",              Bc, 48.43, -123.37,   20.0, 10.4, 12.6, 11.5,   2.0,  -2.5;
    "ca-mb-winnipeg",     "Winnipeg",              Mb, 49.90,  -97.14,  239.0,  3.0, 36.1, 13.0, -18.5, -30.0;
    "ca-nb-fredericton",  "Fredericton",           Nb, 45.96,  -66.64,   20.0,  5.8, 28.5, 14.0, -12.0, -21.5;
    "ca-nb-moncton",      "Moncton",               Nb, 46.09,  -64.77,   20.0,  6.0, 27.3, 14.0, -11.0, -20.0;
    "ca-nl-goose-bay",    "Happy Valley-Goose Bay",Nl, 53.30,  -60.33,   30.0,  0.3, 33.0,  9.5, -19.5, -28.0;
    "ca-nl-st-johns",     "St. John's",            Nl, 47.56,  -52.71,   60.0,  5.3, 20.8, 11.5,  -6.5, -13.0;
    "ca-ns-halifax",      "Halifax",               Ns, 44.65,  -63.58,   40.0,  7.5, 23.2, 14.5,  -7.5, -14.5;
    "ca-nt-yellowknife",  "Yellowknife",           Nt, 62.45, -114.37,  206.0, -4.1, 42.5,  8.5, -28.0, -38.5;
    "ca-nu-iqaluit",      "Iqaluit",               Nu, 63.75,  -68.52,   34.0, -9.0, 35.3,  3.5, -29.0, -37.0;
    "ca-on-london",       "London",                On, 42.98,  -81.25,  251.0,  8.3, 26.2, 15.5,  -8.0, -16.0;
    "ca-on-ottawa",       "Ottawa",                On, 45.42,  -75.70,   80.0,  6.8, 31.3, 14.5, -13.0, -22.0;
    "ca-on-sudbury",      "Sudbury",               On, 46.49,  -81.00,  260.0,  4.3, 31.8, 13.0, -15.5, -26.0;
    "ca-on-thunder-bay",  "Thunder Bay",           On, 48.38,  -89.25,  199.0,  2.9, 32.0, 12.0, -16.5, -28.0;
    "ca-on-toronto",      "Toronto",               On, 43.65,  -79.38,   90.0,  9.4, 25.8, 15.5,  -8.0, -15.5;
    "ca-on-windsor",      "Windsor",               On, 42.31,  -83.04,  185.0, 10.0, 26.7, 16.5,  -6.5, -14.0;
    "ca-pe-charlottetown","Charlottetown",         Pe, 46.24,  -63.13,   20.0,  6.1, 26.5, 15.0,  -9.5, -18.0;
    "ca-qc-montreal",     "Montréal",              Qc, 45.50,  -73.57,   36.0,  7.1, 30.9, 15.0, -12.5, -21.0;
    "ca-qc-quebec",       "Québec",                Qc, 46.81,  -71.21,   60.0,  4.8, 31.5, 14.0, -14.5, -23.5;
    "ca-qc-saguenay",     "Saguenay",              Qc, 48.43,  -71.07,   60.0,  3.0, 34.0, 13.0, -18.0, -27.0;
    "ca-sk-regina",       "Regina",                Sk, 50.45, -104.62,  577.0,  3.3, 33.2, 11.0, -16.5, -30.5;
    "ca-sk-saskatoon",    "Saskatoon",             Sk, 52.13, -106.67,  482.0,  3.1, 33.4, 11.0, -17.0, -31.5;
    "ca-yt-whitehorse",   "Whitehorse",            Yt, 60.72, -135.06,  670.0,  0.1, 29.5,  6.0, -18.0, -35.0;
}
