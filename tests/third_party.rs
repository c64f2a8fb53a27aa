//! The licences of what is linked into the command, kept beside it in
//! `fits-repl/THIRD-PARTY.txt`: made from Cargo's own account of the locked
//! packages, and held to it. A licence that nobody has looked at fails.

use std::{
    collections::{BTreeMap, BTreeSet},
    fmt::Write as _,
    fs,
    path::{Path, PathBuf},
    process::Command,
};

use fits_checks::{hold_generated, project_file};
use serde_json::Value;

/// Licences that ask for no more than that their text is passed on. MPL-2.0
/// asks besides for the source of that package, which is published unchanged.
const TAKEN: [&str; 5] = ["MIT", "BSD-3-Clause", "BSL-1.0", "Apache-2.0", "MPL-2.0"];

/// Cargo's answer, with the versions of the lock file.
fn cargo(arguments: &[&str]) -> String {
    let out = Command::new(env!("CARGO"))
        .args(arguments)
        .current_dir(project_file(""))
        .output()
        .expect("cargo runs");
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    String::from_utf8(out.stdout).expect("text")
}

/// A package that is linked into the command on some system.
struct Package {
    licence: String,
    folder: PathBuf,
}

/// By name and version.
fn linked() -> BTreeMap<String, Package> {
    let metadata: Value =
        serde_json::from_str(&cargo(&["metadata", "--locked", "--format-version", "1"]))
            .expect("JSON");
    let known: BTreeMap<String, &Value> = metadata["packages"]
        .as_array()
        .expect("packages")
        .iter()
        .map(|it| (format!("{} {}", text(it, "name"), text(it, "version")), it))
        .collect();
    let tree = cargo(&[
        "tree",
        "--locked",
        "--package",
        "fits-repl",
        "--edges",
        "normal,no-proc-macro",
        "--target",
        "all",
        "--prefix",
        "none",
        "--format",
        "{p}",
    ]);
    tree.lines()
        .filter_map(|line| {
            let (name, version) = line.split_once(" v")?;
            let version = version.split(' ').next()?;
            let name = format!("{name} {version}");
            (!name.starts_with("fits-")).then(|| {
                let package = known.get(&name).unwrap_or_else(|| panic!("no package {name}"));
                let manifest = Path::new(text(package, "manifest_path"));
                let folder = manifest.parent().expect("a folder").to_owned();
                (name, Package { licence: text(package, "license").to_owned(), folder })
            })
        })
        .collect()
}

fn text<'a>(package: &'a Value, key: &str) -> &'a str {
    package[key].as_str().unwrap_or_else(|| panic!("no {key}: {package}"))
}

/// The licence taken of those that a package offers: MIT where it is one.
fn taken<'a>(name: &str, offered: &'a str) -> &'a str {
    let offers: Vec<&str> = offered.split(" OR ").flat_map(|part| part.split('/')).collect();
    TAKEN
        .iter()
        .find_map(|wanted| offers.iter().copied().find(|offer| offer == wanted))
        .unwrap_or_else(|| panic!("{name} is under {offered}: look at it, then take it in"))
}

/// The text of the licence taken, as the package carries it.
fn licence_text(folder: &Path, licence: &str) -> Option<String> {
    let mut files: Vec<String> = fs::read_dir(folder)
        .expect("the package is unpacked")
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| {
            let name = name.to_ascii_uppercase();
            name.starts_with("LICEN") || name.starts_with("COPYING")
        })
        .collect();
    files.sort();
    // `LICENSE-MIT` before a file that stands for all.
    let short = licence.split('-').next().unwrap_or(licence);
    let named = files.iter().find(|name| name.to_ascii_uppercase().contains(short));
    let alone = files.iter().find(|name| !name.contains('-'));
    let text = fs::read_to_string(folder.join(named.or(alone)?)).expect("a text");
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    Some(lines.join("\n").trim().to_owned())
}

#[test]
fn the_list_beside_the_command_is_what_is_linked() {
    let packages = linked();
    assert!(packages.len() > 30, "{} packages", packages.len());
    let mut out = String::from(
        "Packages by others that are part of the command `fits` on one system or\n\
         another, and the licences that they are passed on under.\n\n",
    );
    let mut texts: BTreeMap<String, BTreeSet<&str>> = BTreeMap::new();
    for (name, package) in &packages {
        let licence = taken(name, &package.licence);
        writeln!(out, "{name}: {licence}").expect("a string");
        let text = licence_text(&package.folder, licence)
            .unwrap_or_else(|| format!("{licence}: the package carries no text of it."));
        texts.entry(text).or_default().insert(name);
    }
    for (text, names) in texts {
        let names: Vec<&str> = names.into_iter().collect();
        write!(out, "\n{}\n{}\n\n{text}\n", "-".repeat(72), names.join(", ")).expect("a string");
    }
    hold_generated("fits-repl/THIRD-PARTY.txt", &out);
}

/// Both licences of the project stand in each package, the same as at the top.
#[test]
fn each_package_carries_the_licence_texts() {
    for licence in ["LICENSE-MIT", "LICENSE-APACHE"] {
        let top = fs::read(project_file(licence)).expect("a licence");
        for package in ["fits-core", "fits-repl"] {
            let own = fs::read(project_file(&format!("{package}/{licence}"))).expect("a licence");
            assert!(top == own, "{package}/{licence} is not the one at the top");
        }
    }
}
