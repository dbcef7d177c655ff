"""Set Trailbench up in this checkout, then run it, test it, or put it into the desktop's menu.

    python3 packaging/start.py run [what the app takes]
    python3 packaging/start.py test [what pytest takes]
    python3 packaging/start.py desktop

This file is kept readable for every Python since 2.7, so that an old one can say what is missing.
"""

import sys

OLDEST = (3, 11)


def main():  # type: () -> int
    """Check the Python, then hand over; the exit code is the program's."""
    if sys.version_info < OLDEST:
        sys.stderr.write(
            "Trailbench needs Python %d.%d or newer, and this is Python %d.%d. "
            "Install a newer one and start with it, for example: python3.11 packaging/start.py run\n"
            % (OLDEST + tuple(sys.version_info[:2]))
        )
        return 1
    import commands

    return commands.main(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
