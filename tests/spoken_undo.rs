//! An entry said in the shop's words and refused leaves nothing to take back.

use fits_repl::{answer::Answer, session::Session};

fn entries(session: &mut Session) -> usize {
    match session.evaluate("log") {
        Ok(Answer::PassLog(log)) => log.entries.len(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn oops_after_a_refused_entry_keeps_the_good_one() {
    for slip in ["took 0.2 got 15", "cut 0.2 = 15", "dialled 0.2 reads 15"] {
        let mut session = Session::new();
        session.evaluate("bore 20 H7 from 19.2 with bore gauge").expect("a log");
        session.evaluate("took 0.2 got 19.392").expect("an entry");
        assert_eq!(entries(&mut session), 1);
        assert!(session.evaluate(slip).is_err(), "{slip} was taken");
        assert!(session.evaluate("oops").is_err(), "{slip}: nothing was entered");
        assert_eq!(entries(&mut session), 1, "{slip}");
        session.evaluate("oops").expect("the good entry is taken back when asked again");
    }
}
