"""Every check there is: what is looked at, how, and what is often wrong with it.

Every sentence and reason here is common practice, no source: the maker's manual comes before it.
"""

from __future__ import annotations

from dataclasses import dataclass

EXPOSED_FRONT, EXPOSED_REAR = "exposed_front", "exposed_rear"
TRAVEL_FRONT, TRAVEL_REAR = "travel_front", "travel_rear"


@dataclass(frozen=True, slots=True)
class Check:
    """One thing to look at. ``needs`` names what the bike must have for it to make sense."""

    code: str
    area: str
    title: str
    how: str
    reasons: tuple[str, ...] = ()
    is_quick: bool = False
    is_grave: bool = False  # where it is found unfit to ride, nobody rides it on their own word
    needs: tuple[str, ...] = ()
    measures: str = ""  # what is measured with it, in words; empty: nothing


CHECKS = (
    Check(
        "frame",
        "sound",
        "Frame and swingarm",
        "Wipe it; look along the welds, the shock's mounts and the chainstays in raking light.",
        ("Crack", "Dent", "Paint lifted at a weld"),
        is_quick=True,
        is_grave=True,
    ),
    Check(
        "steerer",
        "sound",
        "Steerer, stem and bar",
        "Look for creases and scores; the stem's bolts are at the maker's torque and the bar does not turn.",
        ("Bar turns", "Crease or score", "Bolt damaged", "Bar ends not the same height"),
        is_grave=True,
    ),
    Check(
        "headset",
        "sound",
        "Headset",
        "Front brake on, rock the bike: no knock. Lift the front: the bar falls to both sides by itself.",
        ("Knocks", "Turns roughly", "Tight"),
        is_quick=True,
    ),
    Check(
        "crown",
        "fork",
        "Crown and stanchion joint",
        "Front brake on, push and listen with a finger on the crown: no creak, nothing moves.",
        ("Creaks", "Moves", "Corrosion at the joint"),
        is_quick=True,
        is_grave=True,
        needs=("fork",),
    ),
    Check(
        "crown_bolts",
        "fork",
        "Both crowns",
        "The clamp bolts are at the maker's torque, the stanchions stand equally high above both crowns.",
        ("Bolt loose", "Stanchions not level", "Crown cracked"),
        is_quick=True,
        is_grave=True,
        needs=("fork", "dual_crown"),
    ),
    Check(
        "stanchions",
        "fork",
        "Stanchions",
        "Clean them and run a fingernail over the whole stroke, all around.",
        ("Scratch that catches a nail", "Coating worn", "Bent"),
        is_quick=True,
        needs=("fork", "upright"),
    ),
    Check(
        "sliders",
        "fork",
        "Sliding tubes and guards",
        "The tubes slide below: look behind the guards and run a fingernail over the whole stroke.",
        ("Scratch that catches a nail", "Guard missing", "Bent"),
        is_quick=True,
        needs=("fork", "inverted"),
    ),
    Check(
        "fork_seals",
        "fork",
        "Fork seals and leaks",
        "Push ten times: a thin film is normal, a ring that runs is not. Look below both legs.",
        ("Oil ring", "Oil below the leg", "Seal torn", "Dry and sticking"),
        is_quick=True,
        needs=("fork",),
    ),
    Check(
        "fork_damping",
        "fork",
        "Fork damps",
        "Push and let go with rebound closed and again open: closed comes back slower.",
        ("No damping", "No difference between closed and open", "Knocks on the way back"),
        is_quick=True,
        is_grave=True,
        needs=("fork", "damped_both"),
    ),
    Check(
        "fork_damping_leg",
        "fork",
        "Fork damps (one leg)",
        "The damper is in one leg only. Push and let go with rebound closed and again open: closed comes back slower.",
        ("No damping", "No difference between closed and open", "Oil from the damper leg"),
        is_quick=True,
        is_grave=True,
        needs=("fork", "damped_one"),
    ),
    Check(
        "fork_play",
        "fork",
        "Play in the fork",
        "Front brake on, a finger across the seal, rock gently: a knock there is worn bushings.",
        ("A little play", "Knocks"),
        needs=("fork",),
    ),
    Check(
        "rigid_fork",
        "sound",
        "Rigid fork",
        "Wipe it; look at the crown, the legs and the ends in raking light.",
        ("Crack", "Bent", "Dent"),
        is_quick=True,
        is_grave=True,
        needs=("rigid_front",),
    ),
    Check(
        "shaft",
        "shock",
        "Shock shaft",
        "Clean it and run a fingernail over it. It is straight all the way.",
        ("Bent", "Scratch that catches a nail", "Coating worn"),
        is_quick=True,
        is_grave=True,
        needs=("shock",),
    ),
    Check(
        "shock_seals",
        "shock",
        "Shock seals and leaks",
        "Compress it ten times: no oil on the shaft. On an air shock no hiss, and the pressure stays.",
        ("Oil on the shaft", "Loses air", "Sucks itself short"),
        is_quick=True,
        needs=("shock",),
    ),
    Check(
        "shock_damping",
        "shock",
        "Shock damps",
        "Push the saddle and let go with rebound closed and again open: closed comes back slower.",
        ("No damping", "No difference between closed and open", "Gurgles"),
        is_quick=True,
        is_grave=True,
        needs=("shock",),
    ),
    Check(
        "shock_mounts",
        "shock",
        "Shock mounting",
        "Lift the saddle a little: no knock at the eyes. The bolts are at torque, the position is written down.",
        ("Bushing worn", "Bolt loose", "Position not known"),
        needs=("shock",),
    ),
    Check(
        "coil_collar",
        "shock",
        "Coil and collar",
        "The collar is not loose and not turned past the maker's preload; the coil does not touch anything.",
        ("Collar loose", "Too much preload", "Coil rubs"),
        is_quick=True,
        needs=("coil_rear",),
    ),
    Check(
        "pivots",
        "shock",
        "Frame pivots",
        "Rock the rear wheel sideways and lift it: no play. Without the shock the swingarm moves freely.",
        ("Play", "Rough", "Creaks"),
        needs=("shock",),
    ),
    Check(
        EXPOSED_FRONT,
        "room",
        "Exposed stanchion",
        "Wheel off the floor, fully extended: measure from the seal to the crown.",
        ("Shorter than it should be", "Sucked down"),
        is_quick=True,
        needs=("fork", "upright"),
        measures="Seal to crown",
    ),
    Check(
        "exposed_sliders",
        "room",
        "Exposed sliding tube",
        "Wheel off the floor, fully extended: measure from the seal down to the axle clamp.",
        ("Shorter than it should be", "Sucked down"),
        is_quick=True,
        needs=("fork", "inverted"),
        measures="Seal to clamp",
    ),
    Check(
        EXPOSED_REAR,
        "room",
        "Exposed shock shaft",
        "Fully extended: measure from the seal to the end of the shaft that can be seen.",
        ("Shorter than it should be", "Sucked down"),
        needs=("shock",),
        measures="Shaft in sight",
    ),
    Check(
        TRAVEL_FRONT,
        "room",
        "True travel and clearance, fork",
        "Vented slowly or without its coil, compress fully: read the travel, and that tyre and crown touch nothing.",
        ("Contact at full compression", "Less travel than stated", "More travel than stated"),
        is_grave=True,
        needs=("fork",),
        measures="Travel read",
    ),
    Check(
        TRAVEL_REAR,
        "room",
        "True stroke and clearance, shock",
        "Vented slowly or without its coil, compress fully: read the stroke, and that tyre and saddle touch nothing.",
        ("Contact at full compression", "Less stroke than stated", "More stroke than stated"),
        is_grave=True,
        needs=("shock",),
        measures="Stroke read",
    ),
    Check(
        "brakes",
        "running",
        "Brakes",
        "Both levers are firm before the bar; pads and discs are dry and thick enough.",
        ("Oil on a brake", "Lever comes to the bar", "Pads worn", "Disc bent"),
        is_quick=True,
        is_grave=True,
    ),
    Check(
        "wheels",
        "running",
        "Wheels and axles",
        "Axles tight, no play at the rim; spin it: true, no loose spoke, no dent.",
        ("Axle loose", "Play in the hub", "Out of true", "Spoke broken", "Rim dented"),
        is_quick=True,
    ),
    Check(
        "tyres",
        "running",
        "Tyres",
        "Look at the tread and both sides; the pressure is read before anything is let out.",
        ("Worn", "Side cut", "Sealant dry"),
    ),
    Check(
        "drive",
        "running",
        "Crank, chain and pedals",
        "No play in the crank, chain not worn, pedals tight: a knock here sounds like suspension.",
        ("Play in the crank", "Chain worn", "Pedal loose"),
    ),
    Check(
        "motor",
        "running",
        "Motor and battery",
        "Switched off. The battery is locked and does not rattle; cables run free at full compression.",
        ("Battery rattles", "Cable pulled", "Cover cracked"),
        is_quick=True,
        needs=("ebike",),
    ),
)
