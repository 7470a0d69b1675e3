from spindlewise.site.job import Job, silent


def test_silent_passes_jobs_on():
    jobs = [Job("a", lambda: b"1"), Job("b", lambda: b"2")]
    assert [job.make() for job in silent(jobs, 2)] == [b"1", b"2"]
