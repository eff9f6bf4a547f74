"""A structure with several freedoms shows each of its motions when asked, and says what moves."""


def test_each_of_several_motions_is_shown_and_told_in_turn(hand):
    (hand.folder / "loose.yaml").write_text("points: {A: [0, 0], B: [1, 0], C: [1, 1], W: [3, 0], V: [4, 0]}\nmembers: {one: A B C, two: W V}\nsupports: {A: pin, W: pin}\nloads: [5 N at C right, 2 N at V down]\n")
    hand.open("loose.yaml")
    following = hand.page.get_by_role("button", name="The next motion")
    assert following.count() == 0
    hand.page.get_by_role("button", name="Let it move").click()
    hand.settle()
    first = hand.page.locator(".motion span").inner_text()
    assert "about A" in first or "about W" in first
    assert following.inner_text() == "The next motion (2 of 2)"

    following.click()
    hand.settle()
    second = hand.page.locator(".motion span").inner_text()
    assert {first[-2:], second[-2:]} == {"A.", "W."}
    assert hand.page.locator(".spoken").inner_text() == second

    moving, still = ("B", "V") if second.endswith("A.") else ("V", "B")
    load = {"B": "load1", "V": "load2"}
    hand.page.wait_for_timeout(500)
    assert "translate" in (hand.page.locator(f"#figure [data-action={load[moving]}]").get_attribute("transform") or "")
    assert not hand.page.locator(f"#figure [data-action={load[still]}]").get_attribute("transform")

    following.click()
    hand.settle()
    assert hand.page.locator(".motion span").inner_text() == first
    hand.page.get_by_role("button", name="Hold it still").click()
    hand.settle()
    assert following.count() == 0


def test_of_one_motion_there_is_no_next(hand):
    (hand.folder / "loose.yaml").write_text("points: {A: [0, 0], B: [1, 0]}\nmembers: {one: A B}\nsupports: {A: pin}\nloads: [5 N at B down]\n")
    hand.open("loose.yaml")
    hand.page.get_by_role("button", name="Let it move").click()
    hand.settle()

    assert hand.page.locator(".motion span").count() == 1
    assert hand.page.get_by_role("button", name="The next motion").count() == 0


def test_a_roller_that_has_to_pull_is_told_above_its_answer(hand):
    (hand.folder / "lever.yaml").write_text("points: {A: [0, 0], B: [2, 0], C: [3, 0]}\nmembers: {beam: A B C}\nsupports: {A: roller, B: pin}\nloads: [300 N at C down]\nfind: [A]\n")
    hand.open("lever.yaml")
    told, answer = hand.page.locator(".notices li"), hand.page.locator(".answers li").first
    assert told.inner_text().startswith("The roller at A has to pull")
    assert told.bounding_box()["y"] < answer.bounding_box()["y"]

