//! The simulated year: 365 days, the first of January a Monday, no leap day.
//!
//! For day, month and weekday arithmetic only. The core has no clock: a real date enters as a [`DayOfYear`]
//! that the caller made, and the simulated year is the same year every time. It starts on a Monday so that a
//! year's count of weekdays and weekends does not depend on when somebody asked; its last day is a Monday too.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Days of the simulated year.
pub const DAYS_PER_YEAR: u16 = 365;
/// Hours of a day.
pub const HOURS_PER_DAY: u16 = 24;
/// Hours of the simulated year.
pub const HOURS_PER_YEAR: u16 = DAYS_PER_YEAR * HOURS_PER_DAY;
/// Minutes of a day.
pub const MINUTES_PER_DAY: u16 = 1_440;
/// Seconds of an hour.
pub const SECONDS_PER_HOUR: f64 = 3_600.0;
/// Seconds of a day.
pub const SECONDS_PER_DAY: f64 = 86_400.0;
/// Seconds of the simulated year.
pub const SECONDS_PER_YEAR: f64 = SECONDS_PER_DAY * DAYS_PER_YEAR as f64;
/// Months of a year.
pub const MONTHS_PER_YEAR: usize = 12;
/// Days of a week.
pub const DAYS_PER_WEEK: u16 = 7;

/// A month of the year. As a number it is its place in the year, January = 0, fit to index an array of twelve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names of the months say all there is")]
pub enum Month {
    January,
    February,
    March,
    April,
    May,
    June,
    July,
    August,
    September,
    October,
    November,
    December,
}

impl Month {
    /// The twelve months in order.
    pub const ALL: [Self; MONTHS_PER_YEAR] = [
        Self::January,
        Self::February,
        Self::March,
        Self::April,
        Self::May,
        Self::June,
        Self::July,
        Self::August,
        Self::September,
        Self::October,
        Self::November,
        Self::December,
    ];

    /// Place in the year, 0 for January to 11 for December.
    pub const fn index(self) -> usize {
        self as usize
    }

    /// Days of this month in the simulated year, 28 to 31.
    pub const fn days(self) -> u16 {
        match self {
            Self::February => 28,
            Self::April | Self::June | Self::September | Self::November => 30,
            _ => 31,
        }
    }

    /// First day of this month.
    pub const fn first_day(self) -> DayOfYear {
        let before = match self {
            Self::January => 0,
            Self::February => 31,
            Self::March => 59,
            Self::April => 90,
            Self::May => 120,
            Self::June => 151,
            Self::July => 181,
            Self::August => 212,
            Self::September => 243,
            Self::October => 273,
            Self::November => 304,
            Self::December => 334,
        };
        DayOfYear(before + 1)
    }

    /// Last day of this month.
    pub const fn last_day(self) -> DayOfYear {
        DayOfYear(self.first_day().0 + self.days() - 1)
    }
}

/// A day that the simulated year does not have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error("no such day: the year has days 1 to 365, and no 29 February (got day {day}, month {month:?})")]
pub struct NoSuchDay {
    /// Month that was named, when one was.
    pub month: Option<Month>,
    /// Day of that month, or day of the year when no month was named.
    pub day: u16,
}

/// A day of the simulated year: 1 is 1 January, a Monday; 365 is 31 December.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "u16", into = "u16")]
pub struct DayOfYear(u16);

impl DayOfYear {
    /// 1 January.
    pub const FIRST: Self = Self(1);
    /// 31 December.
    pub const LAST: Self = Self(DAYS_PER_YEAR);

    /// The day with this number, counted from 1.
    ///
    /// # Errors
    /// [`NoSuchDay`] outside 1 to 365.
    pub const fn new(day: u16) -> Result<Self, NoSuchDay> {
        if day >= 1 && day <= DAYS_PER_YEAR { Ok(Self(day)) } else { Err(NoSuchDay { month: None, day }) }
    }

    /// The day `index` days after 1 January; past 31 December it goes on with the next 1 January. For loops
    /// over days or hours (`hour / 24`), which may run beyond one year.
    pub const fn from_index(index: u32) -> Self {
        Self((index % DAYS_PER_YEAR as u32) as u16 + 1)
    }

    /// The day of a date, `day_of_month` counted from 1.
    ///
    /// # Errors
    /// [`NoSuchDay`] when the month has no such day. 29 February is refused too: the caller says which
    /// neighbour it wants.
    pub const fn from_date(month: Month, day_of_month: u16) -> Result<Self, NoSuchDay> {
        if day_of_month >= 1 && day_of_month <= month.days() {
            Ok(Self(month.first_day().0 + day_of_month - 1))
        } else {
            Err(NoSuchDay { month: Some(month), day: day_of_month })
        }
    }

    /// Every day in order.
    pub fn all() -> impl DoubleEndedIterator<Item = Self> + ExactSizeIterator {
        (1..DAYS_PER_YEAR + 1).map(Self)
    }

    /// The number of the day, 1 to 365.
    pub const fn number(self) -> u16 {
        self.0
    }

    /// Days since 1 January, 0 to 364: fit to index an array of 365.
    pub const fn index(self) -> usize {
        (self.0 - 1) as usize
    }

    /// The month this day lies in.
    pub const fn month(self) -> Month {
        // Eleven comparisons at most; the callers ask once a simulated day.
        let mut candidate = MONTHS_PER_YEAR - 1;
        while candidate > 0 && Month::ALL[candidate].first_day().0 > self.0 {
            candidate -= 1;
        }
        Month::ALL[candidate]
    }

    /// Day of the month, 1 to 31.
    pub const fn day_of_month(self) -> u16 {
        self.0 - self.month().first_day().0 + 1
    }

    /// Day of the week, 0 for Monday to 6 for Sunday.
    pub const fn weekday(self) -> u16 {
        (self.0 - 1) % DAYS_PER_WEEK
    }

    /// Whether this is a Saturday or a Sunday.
    pub const fn is_weekend(self) -> bool {
        self.weekday() >= 5
    }

    /// The day after this one; after 31 December it is 1 January again.
    pub const fn next(self) -> Self {
        Self(self.0 % DAYS_PER_YEAR + 1)
    }
}

impl TryFrom<u16> for DayOfYear {
    type Error = NoSuchDay;

    fn try_from(day: u16) -> Result<Self, NoSuchDay> {
        Self::new(day)
    }
}

impl From<DayOfYear> for u16 {
    fn from(day: DayOfYear) -> Self {
        day.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn months_tile_the_year_without_gap_or_overlap() {
        let mut expected = 1;
        for month in Month::ALL {
            assert_eq!(month.first_day().number(), expected, "{month:?}");
            expected = month.last_day().number() + 1;
        }
        assert_eq!(expected, DAYS_PER_YEAR + 1);
    }

    #[test]
    fn every_day_goes_to_its_date_and_back() {
        let mut previous: Option<DayOfYear> = None;
        for (index, day) in DayOfYear::all().enumerate() {
            assert_eq!(day.index(), index);
            assert_eq!(DayOfYear::from_date(day.month(), day.day_of_month()), Ok(day));
            assert!(previous.is_none_or(|p| p.next() == day && p.month() <= day.month()));
            previous = Some(day);
        }
        assert_eq!(previous, Some(DayOfYear::LAST));
        assert_eq!(DayOfYear::LAST.next(), DayOfYear::FIRST);
    }

    /// Days of the year as printed in any calendar of a common year.
    #[test]
    fn known_dates_have_their_known_day_numbers() {
        for (month, day, number) in [
            (Month::January, 1, 1),
            (Month::February, 28, 59),
            (Month::March, 1, 60),
            (Month::July, 4, 185),
            (Month::October, 31, 304),
            (Month::December, 25, 359),
            (Month::December, 31, 365),
        ] {
            assert_eq!(
                DayOfYear::from_date(month, day).map(DayOfYear::number),
                Ok(number),
                "{month:?} {day}"
            );
        }
    }

    #[test]
    fn weeks_start_on_the_monday_that_is_the_first_of_january() {
        assert_eq!(DayOfYear::FIRST.weekday(), 0);
        let weekend: Vec<u16> =
            DayOfYear::all().filter(|d| d.is_weekend()).map(DayOfYear::number).take(4).collect();
        assert_eq!(weekend, [6, 7, 13, 14]);
        // 52 full weeks and one more Monday.
        assert_eq!(DayOfYear::all().filter(|d| d.is_weekend()).count(), 104);
        assert_eq!(DayOfYear::LAST.weekday(), 0);
    }

    #[test]
    fn days_that_do_not_exist_are_refused() {
        for day in [0, 366, u16::MAX] {
            assert_eq!(DayOfYear::new(day), Err(NoSuchDay { month: None, day }));
        }
        for (month, day) in
            [(Month::February, 29), (Month::April, 31), (Month::January, 0), (Month::May, u16::MAX)]
        {
            assert_eq!(DayOfYear::from_date(month, day), Err(NoSuchDay { month: Some(month), day }));
        }
        assert!(serde_json::from_str::<DayOfYear>("-1").is_err());
        assert_eq!(serde_json::from_str::<DayOfYear>("366").map_err(|e| e.is_data()), Err(true));
    }

    #[test]
    fn an_index_past_the_year_wraps() {
        assert_eq!(DayOfYear::from_index(0), DayOfYear::FIRST);
        assert_eq!(DayOfYear::from_index(364), DayOfYear::LAST);
        assert_eq!(DayOfYear::from_index(365), DayOfYear::FIRST);
        assert_eq!(DayOfYear::from_index(u32::MAX).number(), (u32::MAX % 365) as u16 + 1);
    }

    #[test]
    fn saved_form_is_the_plain_number() {
        let day = DayOfYear::new(185).expect("185 is a day");
        assert_eq!(serde_json::to_string(&day).expect("a number serialises"), "185");
        assert_eq!(serde_json::from_str::<DayOfYear>("185").expect("185 is a day"), day);
    }
}
