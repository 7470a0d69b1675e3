from spindlewise.site.job import Job
from spindlewise.site.part import Part


def test_a_part_without_pictures_makes_its_files_when_asked():
    part = Part("prices", "resting", lambda drawn: [Job("data/prices.csv", lambda: b"date\r\n")])
    assert list(part.pictures()) == []
    assert [(job.path, job.make()) for job in part.jobs({})] == [("data/prices.csv", b"date\r\n")]
