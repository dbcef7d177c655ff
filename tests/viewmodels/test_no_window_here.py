"""The refusal of windows in this folder works."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize("name", ["qapp", "qtbot"])
def test_a_viewmodel_test_cannot_get_a_window(request, name):
    with pytest.raises(pytest.fail.Exception, match="without an application or a window"):
        request.getfixturevalue(name)
