import base64
import hashlib

from spindlewise.site.policy import content_policy, source_hash


def test_the_hash_is_that_of_the_text_between_the_tags():
    """CSP level 3, 2.3.1: sha256, base64, in single quotes."""
    digest = base64.b64encode(hashlib.sha256(b"alert('Hello, world.');").digest()).decode()
    assert source_hash("alert('Hello, world.');") == f"'sha256-{digest}'"
    assert digest == "qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng="


def test_nothing_but_the_own_style_and_script_is_allowed():
    policy = content_policy("a{}", "1")
    assert policy.startswith("default-src 'none'; ")
    assert "unsafe" not in policy
    assert "http" not in policy
