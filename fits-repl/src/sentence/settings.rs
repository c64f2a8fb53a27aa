//! Settings, as they are said.

use crate::sentence::{
    Said,
    token::{System, Token},
    view::View,
};

/// How the dials read, what bare numbers are, the gauge in use.
pub(crate) fn settings(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "unit", "instrument", "role", "material", "stuff"], |token| {
        matches!(token, Token::Number(_))
    })?;
    let mut lines = Vec::new();
    // `it's all cast iron`, `material is steel`: of the shop, not of a part.
    if let Some(metal) = view.word("material") {
        let is_said =
            view.has("stuff") || view.types(&["it's all", "its all", "all", "everything"]);
        let is_alone = view.words("material").count() == 1
            && view.numbers().next().is_none()
            && !view.has("head")
            && !view.has("unit")
            && !view.has("instrument");
        return (is_said && is_alone).then(|| Said::plain(format!("material {metal}")));
    }
    if view.has("stuff") {
        return None;
    }
    let reads = view.words("head").find_map(|head| match head {
        "dial diameter" => Some("diameter"),
        "dial radius" => Some("radius"),
        _ => None,
    });
    // `cross slide dial .001 dia`
    let by_words = || {
        let is_diameter = view.says("head", "dial")
            && view.types(&["dia", "diameter", "diam", "on dia", "on diameter"]);
        (is_diameter && view.numbers().next().is_some()).then_some("diameter")
    };
    let reads = reads.or_else(by_words);
    if view
        .words("head")
        .any(|head| !matches!(head, "dial" | "dial diameter" | "dial radius" | "remember"))
    {
        return None;
    }
    if let Some(reads) = reads {
        lines.push(format!("dial {reads}"));
    }
    let numbers: Vec<_> = view.numbers().map(|(_, num)| num).collect();
    let graduation = match numbers[..] {
        [] => None,
        [num] if view.says("role", "division") || view.says("head", "dial") => Some(num),
        _ => return None,
    };
    if let Some(num) = graduation {
        let is_said = view.says("role", "division")
            || view.types(&["is", "are", "set", "set to", "reads in", "in steps of"]);
        if num.mm(system) > 0.5 || reads.is_none() && !is_said {
            return None;
        }
        lines.push(format!("dial graduation {}", num.plain(system)));
    }
    match (view.word("unit"), view.words("unit").count()) {
        (Some("thou"), 1)
            if graduation.is_none() && (reads.is_some() || view.says("head", "dial")) =>
        {
            let reads = lines.join(" ; ");
            let thou = "dial graduation 0.001in".to_owned();
            return Some(Said::ask(
                "how far apart its lines are is not said",
                if reads.is_empty() {
                    vec![thou, "dial graduation 0.002in".into(), "units in".into()]
                } else {
                    vec![format!("{reads} ; {thou}"), reads]
                },
            ));
        }
        (Some(unit), 1) if lines.is_empty() => match unit {
            "inch" => lines.push("units in".into()),
            "mm" => lines.push("units mm".into()),
            _ => return None,
        },
        (None, _) => {}
        _ => return None,
    }
    if let Some(instrument) = view.word("instrument") {
        // A setting is changed where that is said, not by a name alone.
        let is_asked = view.text.to_lowercase().split(' ').any(|word| {
            [
                "measure",
                "use",
                "using",
                "set",
                "remember",
                "always",
                "default",
                "instrument",
                "keep",
            ]
            .contains(&word)
        });
        if view.words("instrument").count() > 1 || !is_asked {
            return None;
        }
        lines.push(format!("instrument {instrument}"));
    }
    (!lines.is_empty()).then_some(Said::Plain(lines))
}
