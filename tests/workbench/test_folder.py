"""Files by name within one folder, saved whole or not at all, never over somebody else's work."""

import os

import pytest

from unpin.workbench.folder import Folder, Refused, stamp_of


@pytest.mark.parametrize("name", ["../x.yaml", "a/b.yaml", "/etc/passwd", ".hidden.yaml", "x.txt", "", "x", "x\x00.yaml", "..", "C:x.yaml", "a\\b.yaml", "x.yaml/", "n" * 250 + ".yaml", "a\u202elmay.yaml", "a\u2028b.yaml", "a\x7f.yaml", "a\u2066.yaml", "\ud800.yaml"])
def test_a_name_cannot_lead_out_of_the_folder(tmp_path, name):
    with pytest.raises(Refused) as refused:
        Folder(tmp_path).save(name, "title: x", None)

    assert refused.value.code == "name"
    assert not list(tmp_path.iterdir())


def test_a_link_that_leads_out_is_neither_listed_nor_read_nor_written(tmp_path):
    outside, inside = tmp_path / "outside.yaml", tmp_path / "in"
    outside.write_text("secret: 1")
    inside.mkdir()
    (inside / "link.yaml").symlink_to(outside)
    folder = Folder(inside)

    assert folder.names() == []
    with pytest.raises(Refused):
        folder.read("link.yaml")
    with pytest.raises(Refused):
        folder.save("link.yaml", "x", stamp_of(b"secret: 1"))
    assert outside.read_text() == "secret: 1"


def test_what_is_no_file_is_neither_waited_for_nor_replaced(tmp_path):
    """A pipe would be read for ever, and with it every later save would wait."""
    os.mkfifo(tmp_path / "pipe.yaml")
    (tmp_path / "folder.yaml").mkdir()
    (tmp_path / "ring.yaml").symlink_to(tmp_path / "ring.yaml")
    folder = Folder(tmp_path)

    assert folder.names() == []
    for name, code in (("pipe.yaml", "not_saved"), ("folder.yaml", "not_saved"), ("ring.yaml", "name")):
        with pytest.raises(Refused):
            folder.read(name)
        with pytest.raises(Refused) as refused:
            folder.save(name, "title: x", None)
        assert refused.value.code == code
    assert sorted(p.name for p in tmp_path.iterdir()) == ["folder.yaml", "pipe.yaml", "ring.yaml"]


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is closed to the superuser")
def test_a_file_that_may_not_be_read_is_not_taken_for_a_new_one(tmp_path):
    (tmp_path / "closed.yaml").write_text("title: kept")
    (tmp_path / "closed.yaml").chmod(0)

    with pytest.raises(Refused) as refused:
        Folder(tmp_path).save("closed.yaml", "title: new", None)

    assert refused.value.code == "not_saved"


def test_a_file_that_has_grown_beyond_bounds_is_not_read_whole(tmp_path):
    (tmp_path / "a.yaml").write_bytes(b"#" * 50_000_000)

    with pytest.raises(Refused) as refused:
        Folder(tmp_path).read("a.yaml")

    assert refused.value.code == "large_file"


def test_a_file_that_changed_on_disk_is_not_overwritten(tmp_path):
    folder = Folder(tmp_path)
    first = folder.save("a.yaml", "one", None)
    second = folder.save("a.yaml", "two", first)

    with pytest.raises(Refused) as refused:
        folder.save("a.yaml", "three", first)

    assert refused.value.status == 409
    assert refused.value.more == {"text": "two", "stamp": second}
    assert folder.read("a.yaml").text == "two"


def test_a_new_file_is_not_put_over_one_that_is_there(tmp_path):
    folder = Folder(tmp_path)
    folder.save("a.yaml", "one", None)

    with pytest.raises(Refused):
        folder.save("a.yaml", "two", None)


def test_a_file_that_is_gone_is_told_as_a_change(tmp_path):
    folder = Folder(tmp_path)
    stamp = folder.save("a.yaml", "one", None)
    (tmp_path / "a.yaml").unlink()

    with pytest.raises(Refused) as refused:
        folder.save("a.yaml", "two", stamp)

    assert refused.value.more == {"text": None, "stamp": None}


STEPS = ("mkstemp", "fdopen", "write", "fsync", "chmod", "replace")


@pytest.mark.parametrize("step", STEPS)
def test_a_save_that_dies_at_any_step_leaves_the_old_file_or_the_new_one(tmp_path, monkeypatch, step):
    """Each system call of a save fails once, as when the process is killed there or the disk is full."""
    import tempfile

    from unpin import output

    folder = Folder(tmp_path)
    stamp = folder.save("a.yaml", "old", None)

    def dies(*_, **__):
        raise OSError(28, "No space left on device")

    places = {"mkstemp": (tempfile, "mkstemp"), "fdopen": (os, "fdopen"), "fsync": (os, "fsync"), "chmod": (os, "chmod"), "replace": (os, "replace")}
    if step == "write":
        real = os.fdopen

        class Broken:
            def __init__(self, handle, mode):
                self.stream = real(handle, mode)

            def __enter__(self):
                return self

            def __exit__(self, *_):
                self.stream.close()

            def write(self, data):
                self.stream.write(data[: len(data) // 2])
                dies()

        monkeypatch.setattr(output.os, "fdopen", Broken)
    else:
        monkeypatch.setattr(*places[step], dies)
    with pytest.raises(Refused):
        folder.save("a.yaml", "new", stamp)
    monkeypatch.undo()

    assert folder.read("a.yaml").text == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["a.yaml"]
    assert folder.save("a.yaml", "new", stamp) == stamp_of(b"new")
