//! `tankful plan`: parts, tools and steps of a case, as JSON, text and comma-separated values.

use super::{case, codes, run};
use serde_json::{Value as Json, json};

fn invented() -> String {
    case(&json!({ "heater_kind": "gas", "pipe_material": "copper", "shares_flue": "yes" }))
}

fn list<'a>(plan: &'a Json, of: &str) -> &'a Vec<Json> {
    plan[of].as_array().unwrap_or_else(|| panic!("{of} of {plan}"))
}

#[test]
fn a_plan_names_parts_tools_and_steps_that_belong_together() {
    let ran = run(&["plan", "--heater", "heat_pump_50", "-"], invented().as_bytes());
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let plan = &ran.json()[0];
    assert_eq!(
        (&plan["line"], &plan["heater"], &plan["people"]),
        (&json!(1), &json!("heat_pump_50"), &json!(2))
    );
    let steps: Vec<&str> = list(plan, "steps").iter().filter_map(|s| s["code"].as_str()).collect();
    let tools: Vec<&str> = list(plan, "tools").iter().filter_map(|t| t["code"].as_str()).collect();
    let at =
        |code: &str| steps.iter().position(|s| *s == code).unwrap_or_else(|| panic!("{code} in {steps:?}"));
    assert!(at("fuel_off") < at("flue_off") && at("purge") < at("power_on"));
    for part in list(plan, "parts") {
        assert!(steps.contains(&part["step"].as_str().expect("a step")), "{part}");
        assert!(
            part["bring"]["value"].as_f64() >= part["needs"]["value"].as_f64().map(|n| n - 1e-6),
            "{part}"
        );
    }
    for step in list(plan, "steps") {
        for tool in list(step, "tools") {
            assert!(tools.contains(&tool.as_str().expect("a code")), "{step}");
        }
        let fuel = step["trade"] == "fuel";
        assert!(!fuel || step["regulated"] == true);
    }
    // Working time adds up from the steps that are certain.
    let minutes: f64 =
        plan["minutes"].as_object().into_iter().flatten().filter_map(|(_, m)| m.as_f64()).sum();
    let steps = list(plan, "steps").iter().filter(|s| s["maybe"] == false);
    let people_minutes: f64 =
        steps.filter_map(|s| Some(s["minutes"].as_f64()? * s["people"].as_f64()?)).sum();
    assert!((minutes - people_minutes).abs() < 1e-6, "{minutes} and {people_minutes}");
}

/// Read by a library that knows nothing of how it was written; the same parts as in the JSON.
#[test]
fn the_list_of_parts_is_a_table() {
    let read = run(&["plan", "--csv", "--heater", "heat_pump_50", "-"], invented().as_bytes());
    assert_eq!(read.code, Some(0), "{}", read.err);
    let mut table = csv::Reader::from_reader(read.out.as_bytes());
    let titles: Vec<String> = table.headers().expect("titles").iter().map(str::to_owned).collect();
    let column = |name: &str| titles.iter().position(|t| t == name).unwrap_or_else(|| panic!("{name}"));
    let (code, bring, needs) = (column("Code"), column("Bring"), column("Needed"));
    let rows: Vec<csv::StringRecord> =
        table.records().map(|r| r.expect("as many fields as titles")).collect();
    for row in &rows {
        let number = |at: usize| row[at].parse::<f64>().unwrap_or_else(|e| panic!("{e}: {row:?}"));
        assert!(number(needs) > 0.0 && number(bring) >= number(needs) - 0.01, "{row:?}");
    }
    let plan = run(&["plan", "--heater", "heat_pump_50", "-"], invented().as_bytes());
    let parts: Vec<String> = list(&plan.json()[0], "parts")
        .iter()
        .map(|p| p["code"].as_str().expect("a code").to_owned())
        .collect();
    assert_eq!(rows.iter().map(|r| r[code].to_owned()).collect::<Vec<_>>(), parts);
}

#[test]
fn text_has_every_step_and_a_heater_that_is_not_there_is_refused() {
    let ran = run(&["plan", "--text", "--heater", "keep", "-"], invented().as_bytes());
    assert!(ran.code == Some(0) && ran.out.contains("anode") && !ran.out.contains('\u{27e8}'), "{}", ran.out);
    let ran = run(&["plan", "--heater", "oil_tank", "-"], invented().as_bytes());
    assert_eq!((ran.code, codes(&ran.json()[0])), (Some(1), vec!["no_such_heater"]));
    let ran = run(&["plan", "--heater", "no-such", "-"], invented().as_bytes());
    assert_eq!(ran.code, Some(2));
}
