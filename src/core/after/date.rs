//! Days of the real calendar. Only what dates of care and of readings need: no clock, no time zone.

use crate::core::calendar::{DayOfYear, Month};

/// A day of the Gregorian calendar, from 1970 to 9999.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    year: i32,
    month: u8,
    day: u8,
}

/// Last day there is: 31 December 9999, in days since 1 January 1970.
const LAST: i64 = 2_932_896;

impl Date {
    /// The day of a year, a month from 1 to 12, and a day of that month; `None` where there is no such day.
    pub fn new(year: i32, month: u8, day: u8) -> Option<Date> {
        let there = (1970..=9999).contains(&year)
            && (1..=12).contains(&month)
            && (1..=days_of(year, month)).contains(&day);
        there.then_some(Date { year, month, day })
    }

    /// Reads `2026-11-25`, the form of ISO 8601; `None` for anything else.
    pub fn parse(text: &str) -> Option<Date> {
        let plain = text.len() == 10
            && text.bytes().enumerate().all(|(i, b)| match i {
                4 | 7 => b == b'-',
                _ => b.is_ascii_digit(),
            });
        let part = |from: usize, to: usize| text.get(from..to)?.parse::<u16>().ok();
        let small = |n: u16| u8::try_from(n).ok();
        if !plain {
            return None;
        }
        Date::new(i32::from(part(0, 4)?), small(part(5, 7)?)?, small(part(8, 10)?)?)
    }

    /// The day with this many days since 1 January 1970; the nearest there is.
    ///
    /// The usual algorithm over eras of 400 years that begin in March (common practice, no source).
    pub fn from_days(days: i64) -> Date {
        let days = days.clamp(0, LAST) + 719_468;
        let (era, of_era) = (days / 146_097, days % 146_097);
        let year_of_era = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
        let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
        let march = (5 * of_year + 2) / 153;
        let day = of_year - (153 * march + 2) / 5 + 1;
        let month = if march < 10 { march + 3 } else { march - 9 };
        let year = year_of_era + era * 400 + i64::from(month <= 2);
        Date { year: year as i32, month: month as u8, day: day as u8 }
    }

    /// The day of a moment, ms since 1970, in Greenwich.
    pub fn from_ms(ms: f64) -> Date {
        Date::from_days((ms / 86_400_000.0).floor() as i64)
    }

    /// Days since 1 January 1970.
    pub fn days(self) -> i64 {
        let (year, month) = (i64::from(self.year) - i64::from(self.month <= 2), i64::from(self.month));
        let (era, of_era) = (year / 400, year % 400);
        let march = if month > 2 { month - 3 } else { month + 9 };
        let of_year = (153 * march + 2) / 5 + i64::from(self.day) - 1;
        era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719_468
    }

    /// This many days later; the last day there is at most.
    #[must_use]
    pub fn plus_days(self, days: i64) -> Date {
        Date::from_days(self.days().saturating_add(days))
    }

    /// This many months later: the same day of the month, or its last one.
    #[must_use]
    pub fn plus_months(self, months: u32) -> Date {
        let all = i64::from(self.year) * 12 + i64::from(self.month) - 1 + i64::from(months);
        let (year, month) = ((all / 12).min(9_999) as i32, (all % 12 + 1) as u8);
        Date { year, month, day: self.day.min(days_of(year, month)) }
    }

    /// The year.
    pub const fn year(self) -> i32 {
        self.year
    }

    /// The month, from 1.
    pub const fn month(self) -> u8 {
        self.month
    }

    /// The day of the month, from 1.
    pub const fn day(self) -> u8 {
        self.day
    }

    /// The same day in the simulated year, which has no 29 February: the day before stands for it.
    pub fn of_year(self) -> DayOfYear {
        let month = Month::ALL.get(usize::from(self.month) - 1).copied().unwrap_or(Month::January);
        let day = u16::from(self.day).min(month.days());
        DayOfYear::from_date(month, day).unwrap_or(DayOfYear::FIRST)
    }

    /// `2026-11-25`.
    pub fn iso(self) -> String {
        format!("{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

const fn days_of(year: i32, month: u8) -> u8 {
    match month {
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Days since 1970 as any system's clock counts them.
    #[test]
    fn known_days() {
        for (text, days) in [
            ("1970-01-01", 0),
            ("2000-02-29", 11_016),
            ("2000-03-01", 11_017),
            ("2026-11-25", 20_782),
            ("2100-03-01", 47_541),
            ("9999-12-31", LAST),
        ] {
            let date = Date::parse(text).expect("a day");
            assert_eq!((date.days(), date.iso().as_str()), (days, text));
            assert_eq!(Date::from_days(days), date);
        }
        let none = [
            "2026-02-29",
            "2100-02-29",
            "2026-13-01",
            "2026-00-10",
            "2026-1-1",
            "+026-01-01",
            "",
            "2026-11-31",
        ];
        assert!(none.iter().all(|text| Date::parse(text).is_none()));
    }

    #[test]
    fn months_end_where_they_end() {
        let day = |text| Date::parse(text).expect("a day");
        assert_eq!(day("2026-01-31").plus_months(1), day("2026-02-28"));
        assert_eq!(day("2027-11-30").plus_months(3), day("2028-02-29"));
        assert_eq!(day("2026-08-31").plus_months(12), day("2027-08-31"));
        assert_eq!(day("2028-02-29").of_year().number(), 59);
        assert_eq!(day("2026-12-31").of_year().number(), 365);
    }

    proptest! {
        #[test]
        fn every_day_comes_back(days in 0..=LAST, more in 0i64..10_000) {
            let date = Date::from_days(days);
            prop_assert_eq!(date.days(), days);
            prop_assert_eq!(Date::parse(&date.iso()), Some(date));
            prop_assert!(date.plus_days(more) >= date && Date::from_days(days.saturating_sub(1)) <= date);
        }
    }
}
