//! How a bushing's bore is sized in place.

use fits_checks::fits;

fn said(query: &str) -> String {
    let output = fits().arg(query).output().unwrap();
    String::from_utf8([output.stdout, output.stderr].concat()).unwrap()
}

// Common practice, no source: a reamer smears the pores of sintered bronze
// shut, so its bore is sized by a burnishing pin.
#[test]
fn sintered_bronze_is_never_told_to_be_reamed() {
    for shaft in ["", ", shaft h6", ", shaft 19.98"] {
        let query = format!("bushing 20 od 26 long 20, hub steel od 60, sintered bronze{shaft}");
        let sintered = said(&query);
        assert!(sintered.contains("20.0"), "{sintered}");
        let reamed =
            sintered.lines().any(|line| line.trim_start().to_lowercase().starts_with("ream "));
        assert!(!reamed, "{query}\n{sintered}");
        let solid = said(&query.replace("sintered bronze", "bronze"));
        assert!(!solid.contains("burnish"), "{solid}");
    }
    let pinned = said("bushing 20 od 26 long 20, hub steel od 60, sintered bronze, shaft h6");
    assert!(pinned.starts_with("PIN "), "{pinned}");
    let reamed = said("bushing 20 od 26 long 20, hub steel od 60, bronze, shaft h6");
    assert!(reamed.starts_with("REAM "), "{reamed}");
}
