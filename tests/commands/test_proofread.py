"""``logbook proofread`` as it is used."""

import json
from pathlib import Path

from tests.support.command_line import done, refused, run
from tests.tasks.written.test_garment import PLAN


def test_a_text_of_our_own_agrees_and_a_changed_one_does_not(tmp_path: Path) -> None:
    plan, text = tmp_path / "plan.json", tmp_path / "text.txt"
    plan.write_text(json.dumps(PLAN), "utf-8")
    done("garment", plan, "--text", text)
    said = json.loads(done("proofread", text, plan, "--json"))
    assert said["problems"] == []
    assert {one["verdict"] for one in said["found"]} == {"agrees"}
    text.write_text(text.read_text("utf-8").replace("Ch 72 (80, 88)", "Ch 72 (80, 98)", 1), "utf-8")
    ran = run("proofread", text, plan, "--json")
    assert ran.code == 1
    (one,) = [one for one in ran.json["found"] if one["verdict"] == "differs"]
    assert (one["text"], one["expected"], one["entries"]) == ("72 (80, 98)", "72 (80, 88)", [3])
    assert "differs: the logbook has 72 (80, 88) (back, chains)" in run("proofread", text, plan).out


def test_a_text_without_numbers_is_not_called_right(tmp_path: Path) -> None:
    plan, text = tmp_path / "plan.json", tmp_path / "text.txt"
    plan.write_text(json.dumps(PLAN), "utf-8")
    text.write_text("My top, for the lake.", "utf-8")
    assert done("proofread", text, plan).strip() == "No numbers of a pattern were found in this text."


def test_what_it_can_not_do(tmp_path: Path) -> None:
    plan = tmp_path / "plan.json"
    plan.write_text(json.dumps(PLAN), "utf-8")
    assert "could not be read" in refused(1, "proofread", tmp_path / "none.txt", plan)
    assert "name the garment" in refused(2, "proofread", plan)
