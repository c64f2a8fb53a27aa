//! Stacks: links resolved, summed up, simulated, and the last part suited.

use std::{num::NonZero, ops::Range, thread};

use fits_core::{
    Length, Limits,
    shop::stack::{Direction, LastPart, Link, Runs, Simulated, Spread, Stack},
    source::{Known, Reason},
};

use crate::{
    answer::{
        Answer, Ends, LastPartFigures, LinkFigures, Mm, QuantileFigures, SimulatedFigures,
        StackAnswer,
    },
    problem::Problem,
    query::{LinkText, StackText, Tolerance, Units},
    questions::{
        part::{
            mates::thought_in,
            resolve::{from_core, inch_class},
        },
        why::answered::said,
    },
    session::Session,
};

/// What is asked of a part without a sign.
pub(crate) const ADDS_OR_TAKES: &str = "does this part add to the play or take from it?";

/// Runs where none are asked for: a chance is then known to 0.2 percent.
const RUNS: u64 = 200_000;
const SEED: u64 = 1;
/// 100 m.
const LONGEST_PART: Length = Length::from_tenth_nanometres(1_000_000_000_000);
/// Steps of the histogram.
const STEPS: usize = 48;
/// The shares of stacks whose play is shown: the middle one, and the tails.
const SHARES: [f64; 7] = [0.001_35, 0.01, 0.05, 0.5, 0.95, 0.99, 0.998_65];

/// A link with its meaning; no limits where the part is still to be made.
struct Found<'a> {
    text: &'a LinkText,
    direction: Direction,
    known: Option<(Limits, String)>,
    spread: Spread,
}

impl Found<'_> {
    fn link(&self, limits: Limits) -> Link {
        Link::new(self.direction, limits).times(self.text.count.value).spread(self.spread)
    }
}

impl Session {
    /// The units of the first link with a size.
    pub(crate) fn stack_thought_in(&self, stack: &StackText) -> Units {
        let first = stack.links.iter().find_map(|link| link.size.as_ref());
        first.map_or(self.units, |size| thought_in(size, self.units))
    }

    pub(crate) fn stack(&self, text: &StackText) -> Result<Answer, Problem> {
        let found = self.links(text)?;
        let wanted = match &text.play {
            None => None,
            Some((from, to)) => {
                let (least, most) = (self.length(from)?, self.length(to)?);
                Some(Limits::new(least, most).map_err(|error| {
                    from_core(&error, from.at.start..to.at.end).advise(
                        "the smaller comes first, as in `stack 20 -16.9 -2.9, play 0.1..0.2`",
                    )
                })?)
            }
        };
        let whole = text.links.first().map_or(0, |link| link.at.start)
            ..text.links.last().map_or(0, |link| link.at.end);
        let last = last_part(&found, wanted, text)?;
        let nothing = Limits::new(Length::ZERO, Length::ZERO)
            .map_err(|error| from_core(&error, whole.clone()))?;
        // A part still to be made is made inside its limits, or to its aim.
        let made = |found: &Found<'_>| match (&found.known, &last) {
            (Some((limits, _)), _) => *limits,
            (None, Some((_, part))) => {
                let aim = Limits::new(part.aim, part.aim).ok();
                part.always.or(part.usually).or(aim).unwrap_or(nothing)
            }
            (None, None) => nothing,
        };
        let links: Vec<Link> = found.iter().map(|found| found.link(made(found))).collect();
        let stack = Stack::new(links).map_err(|error| {
            from_core(&error, whole.clone())
                .advise("as in `stack 20 +0.05/0 -17 ±0.05 -2x 1.4 ±0.05`")
        })?;
        let simulated = simulated(&stack, text, wanted, whole.clone())?;
        let rss = stack.root_sum_square().map_err(|error| from_core(&error, whole))?;
        let shares = stack.shares();
        let figures = found.iter().zip(stack.links()).zip(&shares).map(|((found, link), share)| {
            LinkFigures {
                name: found.text.name.as_ref().map(|name| name.value.clone()),
                sign: if link.direction == Direction::Adds { "+" } else { "-" },
                count: link.count,
                class: found.known.as_ref().map_or("to make".to_owned(), |(_, name)| name.clone()),
                lower_mm: Mm(link.limits.lower()),
                upper_mm: Mm(link.limits.upper()),
                aim_mm: Mm(link.limits.middle()),
                spread: link.spread.word(),
                share_of_worst: share.worst,
                share_of_variance: share.variance,
                known: found.known.as_ref().map_or(Known::Given, |(limits, _)| limits.known()),
            }
        });
        let figures: Vec<LinkFigures> = figures.collect();
        // The first of equals.
        let most = shares.iter().map(|share| share.variance).fold(0.0, f64::max);
        let matters_most = shares.iter().position(|share| most > 0.0 && share.variance >= most);
        Ok(Answer::Stack(Box::new(StackAnswer {
            worst: stack.worst().into(),
            aim_mm: Mm(stack.aim()),
            rss: rss.into(),
            wanted: wanted.map(Ends::from),
            last_part: last.map(|(at, part)| LastPartFigures {
                link: at,
                aim_mm: Mm(part.aim),
                always: part.always.map(Ends::from),
                usually: part.usually.map(Ends::from),
                as_given_will_do: found.get(at).and_then(|found| {
                    let (given, _) = found.known.as_ref()?;
                    Some(part.always.is_some_and(|always| {
                        always.contains(given.lower()) && always.contains(given.upper())
                    }))
                }),
            }),
            simulated,
            known: figures.iter().map(|link| link.known).fold(Known::Given, Known::worst),
            links: figures,
            matters_most,
        })))
    }

    fn links<'a>(&self, text: &'a StackText) -> Result<Vec<Found<'a>>, Problem> {
        let mut found = Vec::with_capacity(text.links.len());
        for (at, link) in text.links.iter().enumerate() {
            let direction = match link.direction {
                Some(direction) => direction,
                None if at == 0 => Direction::Adds,
                None => {
                    let start = link.at.start..link.at.start;
                    return Err(Problem::new(ADDS_OR_TAKES, link.at.clone())
                        .advise("+ adds, - takes away")
                        .fix(start, "-"));
                }
            };
            let known = match &link.size {
                None => None,
                Some(size) => {
                    if let Tolerance::Pair(_, shaft) = &link.tolerance {
                        return Err(Problem::new(
                            "a link is one part, and a pair of classes is two",
                            shaft.at(),
                        )
                        .advise("keep one of them, as `stack 20 h9 -19.8 ±0.05`"));
                    }
                    if let Tolerance::Class(class) = &link.tolerance
                        && inch_class(class).is_some()
                    {
                        return Err(Problem::new(
                            "an inch class is a fit of two parts, and a link is one",
                            class.at(),
                        )
                        .advise("give its limits, as `stack 3/4in ±0.002in -0.7in ±0.002in`"));
                    }
                    let one = self.one(size, self.nominal(size)?, &link.tolerance, None)?;
                    if one.limits.upper() > LONGEST_PART {
                        return Err(Problem::new(
                            "a part of a stack is at most 100 m long",
                            size.at.clone(),
                        )
                        .advise("as in `stack 20 +0.05/0 -17 ±0.05 -2x 1.4 ±0.05`"));
                    }
                    let name =
                        if one.have { "measured".to_owned() } else { one.label.name().to_owned() };
                    Some((one.limits, name))
                }
            };
            let spread = link.spread.as_ref().or(text.all.as_ref());
            let spread = spread.map_or(Spread::default(), |spread| spread.value);
            found.push(Found { text: link, direction, known, spread });
        }
        Ok(found)
    }
}

/// Why a stack's figures are what they are.
pub(crate) fn reasons(stack: &StackAnswer, units: Units) -> Vec<Reason> {
    let mut figures = Vec::new();
    let times = |link: &LinkFigures| match link.count {
        1 => String::new(),
        count => format!("{count} x "),
    };
    let chain = |of: &dyn Fn(&LinkFigures) -> Mm| {
        let parts = stack.links.iter().enumerate().map(|(at, link)| {
            let sign = match (at, link.sign) {
                (0, "+") => "",
                (_, sign) => sign,
            };
            let gap = if sign.is_empty() { "" } else { " " };
            format!("{sign}{gap}{}{}", times(link), said(units, of(link).0))
        });
        parts.collect::<Vec<_>>().join(" ")
    };
    let least = |link: &LinkFigures| if link.sign == "+" { link.lower_mm } else { link.upper_mm };
    let most = |link: &LinkFigures| if link.sign == "+" { link.upper_mm } else { link.lower_mm };
    let mut by_sum = |figure: &str, value: Mm, rule: String| {
        figures.push(Reason {
            figure: figure.into(),
            value: said(units, value.0).into(),
            rule: rule.into(),
            source: "sum of the signed links".into(),
            known: Known::Formula,
        });
    };
    by_sum("least play", stack.worst.min_mm, chain(&least));
    by_sum("greatest play", stack.worst.max_mm, chain(&most));
    by_sum("play at the aims", stack.aim_mm, chain(&|link: &LinkFigures| link.aim_mm));
    let squares = stack.links.iter().map(|link| {
        let half = Limits::new(link.lower_mm.0, link.upper_mm.0)
            .map_or(Length::ZERO, |limits| limits.tolerance().half());
        format!("{}({})^2", times(link), said(units, half))
    });
    figures.push(Reason {
        figure: "root sum square".into(),
        value: format!("{} to {}", said(units, stack.rss.min_mm.0), said(units, stack.rss.max_mm.0)).into(),
        rule: format!(
            "{} +/- sqrt({})",
            said(units, stack.aim_mm.0),
            squares.collect::<Vec<_>>().join(" + ")
        ).into(),
        source: "simple statistical tolerancing, parts on their own and centred; F. Scholz, Tolerance Stack Analysis Methods, 1995".into(),
        known: Known::Formula,
    });
    let spreads: Vec<&str> = Spread::ALL
        .map(Spread::word)
        .into_iter()
        .filter(|word| stack.links.iter().any(|link| link.spread == *word))
        .collect();
    figures.push(Reason {
        figure: format!("{} simulated stacks", stack.simulated.runs),
        value: format!(
            "mean {}, standard deviation {}",
            said(units, stack.simulated.mean_mm.0),
            said(units, stack.simulated.sd_mm.0)
        ).into(),
        rule: format!(
            "every part drawn on its own, {}; uniform: anywhere between the limits; normal: the limits at three standard deviations, none beyond; seed {}",
            spreads.join(", "),
            stack.simulated.seed
        ).into(),
        source: "our choice where no spread is said: uniform, the widest".into(),
        known: Known::Practice,
    });
    figures.push(Reason {
        figure: "shares".into(),
        value: stack
            .links
            .iter()
            .map(|link| {
                format!("{:.0} %, {:.0} %", link.share_of_worst * 100.0, link.share_of_variance * 100.0)
            })
            .collect::<Vec<_>>()
            .join("; ").into(),
        rule: "of the worst case: its tolerance over all tolerances; of the variance: its own over all".into(),
        source: "sum of the signed links".into(),
        known: Known::Formula,
    });
    figures.extend(why_last_part(stack, units));
    figures
}

fn why_last_part(stack: &StackAnswer, units: Units) -> Option<Reason> {
    let (part, wanted) = (stack.last_part.as_ref()?, stack.wanted?);
    let adds = stack.links.get(part.link).is_some_and(|link| link.sign == "+");
    let ends =
        |ends: Ends| format!("{} to {}", said(units, ends.min_mm.0), said(units, ends.max_mm.0));
    let rule = if adds {
        "least: wanted least - the others' least; greatest likewise"
    } else {
        "least: the others' greatest - wanted greatest; greatest: the others' least - wanted least"
    };
    Some(Reason {
        figure: "last part, whatever the others measure".into(),
        value: part.always.map_or("none".to_owned(), ends).into(),
        rule: format!("wanted {}; {rule}", ends(wanted)).into(),
        source: "sum of the signed links".into(),
        known: Known::Formula,
    })
}

/// The part to make last for a wanted play: the one marked `?`, or the last.
fn last_part(
    found: &[Found<'_>],
    wanted: Option<Limits>,
    text: &StackText,
) -> Result<Option<(usize, LastPart)>, Problem> {
    let mut to_make = found.iter().enumerate().filter(|(_, found)| found.known.is_none());
    let marked = to_make.next();
    if let Some((_, second)) = to_make.next() {
        return Err(Problem::new("two parts are still to be made", second.text.at.clone())
            .advise("give all but one, as `stack 20.03 -2x 1.4 -?, play 0.1..0.2`"));
    }
    let Some(wanted) = wanted else {
        return match marked {
            None => Ok(None),
            Some((_, found)) => Err(Problem::new("what play is wanted?", found.text.at.clone())
                .advise("say it, as `stack 20.03 -2x 1.4 -?, play 0.1..0.2`")),
        };
    };
    let Some((at, part)) = marked.or(found.iter().enumerate().next_back()) else {
        return Ok(None);
    };
    let others: Vec<Link> = found
        .iter()
        .enumerate()
        .filter(|(other, _)| *other != at)
        .filter_map(|(_, found)| Some(found.link(found.known.as_ref()?.0)))
        .collect();
    let solved = LastPart::of(&others, part.direction, part.text.count.value, wanted);
    let place =
        text.play.as_ref().map_or(part.text.at.clone(), |(from, to)| from.at.start..to.at.end);
    let solved = solved.map_err(|error| {
        from_core(&error, place)
            .advise("no last part gives this play; as in `stack 20.03 -2x 1.4 -?, play 0.1..0.2`")
    })?;
    Ok(Some((at, solved)))
}

fn simulated(
    stack: &Stack,
    text: &StackText,
    wanted: Option<Limits>,
    whole: Range<usize>,
) -> Result<SimulatedFigures, Problem> {
    let how = Runs {
        runs: text.runs.as_ref().map_or(RUNS, |runs| runs.value),
        seed: text.seed.as_ref().map_or(SEED, |seed| seed.value),
        threads: thread::available_parallelism().map_or(1, NonZero::get),
    };
    let found: Simulated = stack.simulate(how, wanted).map_err(|error| {
        let at = text.runs.as_ref().map_or(whole, |runs| runs.at.clone());
        from_core(&error, at).advise("as in `stack 20 ±0.1 -19.5 ±0.1, runs 1000000`")
    })?;
    Ok(SimulatedFigures {
        runs: found.runs,
        seed: found.seed,
        mean_mm: Mm(found.mean),
        sd_mm: Mm(found.deviation),
        min_mm: Mm(found.least),
        max_mm: Mm(found.greatest),
        quantiles: SHARES
            .into_iter()
            .map(|share| QuantileFigures { share, play_mm: Mm(found.quantile(share)) })
            .collect(),
        probability_below_zero: found.below_nought,
        probability_inside: found.inside,
        histogram: found.histogram(STEPS),
    })
}
