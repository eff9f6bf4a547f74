"""One planted fault each, and the whole message that it gets."""

from pathlib import Path

import pytest

from unpin.read import read_file, read_text
from unpin.words.remarks import render
from unpin.words.sentences import catalogue

SECTIONS = ("title", "text", "units", "gravity", "figures", "letters", "points", "members", "links", "pins", "supports", "loads", "find", "route")
FRAME = {
    "points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2}',
    "members": '{post: O B C, arm: C D}',
    "links": '[B-D]',
    "supports": '{O: fixed}',
    "loads": '[3 N at D down]',
    "find": '[O]',
}
THREE = {
    "points": '{A: [0, 0], B: [1, 0], C: [2, 0], D: [1, 1]}',
    "members": '{ab: A B, bc: B C, bd: B D}',
    "links": None,
    "supports": '{A: fixed, C: fixed, D: fixed}',
    "loads": '[3 N at B down]',
    "find": '[A]',
}
BOW = {
    "points": '{A: [0, 0], B: [1, 0], C: [2, 1]}',
    "members": '{bow: A B C}',
    "links": None,
    "supports": '{A: fixed}',
    "loads": '[3 N at C down]',
    "find": '[A]',
}
FAULTS = [
    (FRAME, {"title": 'a\x07b'},
     'p.yaml:1:9: error: the control character U+0007 is not allowed'),
    (FRAME, {"route": '\n---\ntitle: b'},
     'p.yaml:8:1: error: a second document begins'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1'},
     'p.yaml:1:24: error: the YAML breaks off here\n  hint: is a closing bracket missing?'),
    (FRAME, {"title": 'a: b'},
     'p.yaml:1:9: error: the YAML breaks off here\n  hint: put quotes around a text that holds a colon'),
    (FRAME, {"title": '@a'},
     'p.yaml:1:8: error: the YAML breaks off here\n  hint: put quotes around the phrase'),
    (FRAME, {"title": '"a'},
     'p.yaml:8:1: error: the YAML breaks off here\n  hint: look at the indentation and the quotes here'),
    (FRAME, {"title": '\n\t- a'},
     'p.yaml:2:1: error: the YAML breaks off here\n  hint: indent with spaces, not with tabs'),
    (FRAME, {"title": 'a\n b: c'},
     'p.yaml:2:3: error: the YAML breaks off here\n  hint: put quotes around a text that holds a colon'),
    (FRAME, {"title": '[[[[[[[[[1]]]]]]]]]'},
     'p.yaml:1:15: error: title > 1 > 1 > 1 > 1 > 1 > 1 > 1: nested deeper than 8 levels'),
    (FRAME, {"title": '&a b'},
     'p.yaml:1:8: error: title: anchors and aliases are not used here\n  hint: write the value out, or give it a letter'),
    (FRAME, {"title": '!!int 3'},
     'p.yaml:1:8: error: title: the tag !!int is not used here\n  hint: leave out the word after the exclamation mark'),
    (FRAME, {"pins": '{[C]: pinned}'},
     'p.yaml:4:8: error: pins: a name was wanted, not a list or a mapping'),
    (FRAME, {"supports": '{O: fixed, O: pin}'},
     'p.yaml:4:22: error: supports > O: "O" stands here twice, first in line 4'),
    (FRAME, {"suports": '{O: fixed}'},
     'p.yaml:7:1: error: suports: "suports" is no section\n  hint: nearest known is "supports"'),
    (FRAME, {"colour": 'red'},
     'p.yaml:7:1: error: colour: "colour" is no section\n  hint: a file has points, members, supports, loads and find'),
    (FRAME, {"title": '[a, b]'},
     'p.yaml:1:8: error: title: one phrase was wanted, not a list or a mapping\n  hint: put quotes around a phrase that holds a colon, or a comma within brackets'),
    (FRAME, {"loads": '[{Q: 3 N at D down}]'},
     'p.yaml:5:9: error: loads > 1: one phrase was wanted, not a list or a mapping\n  hint: put quotes around a phrase that holds a colon, or a comma within brackets'),
    (FRAME, {"supports": '[O fixed]'},
     'p.yaml:4:11: error: supports: names with their phrases were wanted\n  hint: write each on a line of its own, as name: phrase'),
    (FRAME, {"loads": '{a: 3 N at D down}'},
     'p.yaml:5:8: error: loads: a list of phrases was wanted, without names\n  hint: write each on a line of its own, after a dash'),
    (FRAME, {"supports": '{O: }'},
     'p.yaml:4:15: error: supports > O: nothing is said here\n  hint: within brackets a comma starts a new entry; put quotes around the phrase'),
    (FRAME, {"title": ''},
     'p.yaml:1:7: error: title: nothing is said here'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, at: [0, 0]}'},
     'p.yaml:1:57: error: points > at: "at" cannot be a name\n  hint: the word has a meaning of its own here; choose another name'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, 2x: [0, 0]}'},
     'p.yaml:1:57: error: points > 2x: "2x" cannot be a name\n  hint: a name is a letter, then letters, digits, _ or \''),
    (FRAME, {"members": '{post: O B C, C: C D}'},
     'p.yaml:2:24: error: members > C: the name "C" is taken, see line 1'),
    (FRAME, {"members": None, "links": None, "supports": None, "loads": None, "find": None},
     'p.yaml:1:1: error: there are neither "members" nor "links"\n  hint: a file has points, members, supports, loads and find'),
    (FRAME, {"loads": None},
     'p.yaml:5:1: warning: there is no load'),
    (FRAME, {"figures": 'three'},
     'p.yaml:1:10: error: figures: found "three", wanted a whole number from 2 to 8'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C rihgt 2}'},
     'p.yaml:1:48: error: points > D: found "rihgt", wanted "from", "of" or right, left, up, down\n  hint: perhaps "right" was meant'),
    (FRAME, {"loads": "['1,5 N at D down']"},
     'p.yaml:5:12: error: loads > 1: found "5", wanted "at", "from", "on", "per", a direction or clockwise, anticlockwise\n  hint: write decimals with a point: 1.6'),
    (FRAME, {"loads": '[3 N at D right 3 dwn 4]'},
     'p.yaml:5:26: error: loads > 1: found "dwn", wanted right, left, up, down\n  hint: perhaps "down" was meant'),
    (FRAME, {"loads": '[3 N at D down up]'},
     'p.yaml:5:23: error: loads > 1: found "up", wanted each thing once'),
    (FRAME, {"loads": '[3 N at D down at D at C]'},
     'p.yaml:5:23: error: loads > 1: found "at", wanted each thing once'),
    (FRAME, {"letters": '{a: 2 3}', "loads": '[3 N*a at D down]'},
     'p.yaml:1:16: error: letters > a: found "3", wanted the end of the phrase'),
    (FRAME, {"letters": '{a: sqrt 2}', "loads": '[3 N*a at D down]'},
     'p.yaml:1:19: error: letters > a: found "2", wanted "("'),
    (FRAME, {"letters": '{a: )}', "loads": '[3 N*a at D down]'},
     'p.yaml:1:14: error: letters > a: found ")", wanted a number or a letter'),
    (FRAME, {"members": '{post: O B C, arm: C at}'},
     'p.yaml:2:31: error: members > arm: found "at", wanted the end of the phrase or a name'),
    (FRAME, {"find": '[O z]'},
     'p.yaml:6:10: error: find > 1: found "z", wanted "-", "on", x, y, couple, magnitude or the end of the phrase'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: on O B at z = 2}'},
     'p.yaml:1:56: error: points > D: found "z", wanted x, y'),
    (FRAME, {"letters": '{a: (2}', "loads": '[3 N*a at D down]'},
     'p.yaml:1:16: error: letters > a: the phrase ends where it wanted ")"'),
    (FRAME, {"loads": '[3 N at]'},
     'p.yaml:5:15: error: loads > 1: the phrase ends where it wanted a point or an angle'),
    (FRAME, {"supports": '{O: roller pushes}'},
     'p.yaml:4:28: error: supports > O: the phrase ends where it wanted "at" or a direction'),
    (FRAME, {"units": 'm, kn'},
     'p.yaml:1:11: error: units: "kn" is no unit\n  hint: nearest known is "kN"'),
    (FRAME, {"units": 'm, mm'},
     'p.yaml:1:11: error: units: m and mm are units of the same thing'),
    (FRAME, {"loads": '[P at D down]'},
     'p.yaml:5:9: error: loads > 1: "P" is neither a letter with a value nor a unit\n  hint: nearest known is "kip"'),
    (FRAME, {"loads": '[3 kn at D down]'},
     'p.yaml:5:11: error: loads > 1: "kn" is neither a letter with a value nor a unit\n  hint: nearest known is "kN"'),
    (FRAME, {"letters": '{a: 2 m + 1}', "loads": '[3 N at D down]'},
     'p.yaml:1:14: error: letters > a: a length and a number cannot be added\n  hint: give each its unit: a + 0.5 m'),
    (FRAME, {"loads": '[3 m at D down]'},
     'p.yaml:5:9: error: loads > 1: "3 m" is a length, wanted a force, a moment or a force per length'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2 kN}'},
     'p.yaml:1:54: error: points > D: "2 kN" is a force, wanted a length'),
    (FRAME, {"loads": '[3 N at D at 4 m]'},
     'p.yaml:5:21: error: loads > 1: "4 m" is a length, wanted an angle'),
    (FRAME, {"letters": '{a: sin(2 m)}'},
     'p.yaml:1:18: error: letters > a: "sin(2 m)" is a length, wanted an angle'),
    (FRAME, {"letters": '{a: 2 m*m}'},
     'p.yaml:1:14: error: letters > a: "2 m*m" is a quantity of another kind, wanted a length, a force or an angle'),
    (FRAME, {"gravity": '3 kg'},
     'p.yaml:1:10: error: gravity: "3 kg" is a mass, wanted an acceleration'),
    (FRAME, {"letters": '{a: 1/(2-2)}'},
     'p.yaml:1:14: error: letters > a: this divides by zero'),
    (FRAME, {"letters": '{a: sqrt(1-2)}'},
     'p.yaml:1:14: error: letters > a: this is the root of a negative number'),
    (FRAME, {"letters": '{a: 2^0.5}'},
     'p.yaml:1:14: error: letters > a: the power must be a whole number from -20 to 20'),
    (FRAME, {"letters": '{a: 99^20^1*9^20}'},
     'p.yaml:1:14: error: letters > a: the number is too large or too small'),
    (FRAME, {"loads": '[-3 N at D down]'},
     'p.yaml:5:9: error: loads > 1: the size is negative\n  hint: leave out the sign and turn the direction or the sense round'),
    (FRAME, {"loads": '[0 N at D down]'},
     'p.yaml:5:9: error: loads > 1: the size is zero'),
    (FRAME, {"letters": '{m: 3 kg}'},
     'p.yaml:1:11: error: letters > m: "m" is a unit or a function and cannot be a letter\n  hint: add a digit or another letter to it'),
    (FRAME, {"letters": '{P: }', "loads": '[P at D down]'},
     'p.yaml:1:11: error: letters > P: the letter "P" has no value; letters without values are not understood yet\n  hint: give it a value for now'),
    (FRAME, {"letters": '{P: 3 N}'},
     'p.yaml:1:11: warning: letters > P: the letter "P" is never used'),
    (FRAME, {"loads": '[3 N at F down]'},
     'p.yaml:5:16: error: loads > 1: point "F" is not known\n  hint: it could be "O", "B", "C" or "D"'),
    (FRAME, {"points": '{O: [0, 0], D: C right 2, C: [0, 2], B: [0, 1]}'},
     'p.yaml:1:24: error: points > D: point "C" is made further down\n  hint: move it above the point that is made from it'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: [2, 2, 0]}'},
     'p.yaml:1:46: error: points > D: wanted 2 coordinates, found 3\n  hint: write decimals with a point: 1.6'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: [2]}'},
     'p.yaml:1:46: error: points > D: wanted 2 coordinates, found 1'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, F: 1 from C towards C}'},
     'p.yaml:1:77: error: points > F: "C" and "C" are one spot and make no line'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: where line O O meets line B C}'},
     'p.yaml:1:59: error: points > D: "O" and "O" are one spot and make no line'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: where line O B meets line B C}'},
     'p.yaml:1:57: error: points > D: the two lines never meet'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: on O B at x = 2}'},
     'p.yaml:1:56: error: points > D: the line never comes to this x'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, F: [0, 3]}'},
     'p.yaml:1:57: warning: points > F: point "F" is never used'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, F: [2, 2]}', "loads": '[3 N at D down, 3 N at D square to C F up]'},
     'p.yaml:1:57: warning: points > F: points "D" and "F" are on one spot'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: [1200, 2]}'},
     'p.yaml:1:43: warning: points > D: point "D" is more than 500 times as far out as the others\n  hint: are metres and millimetres mixed?'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1000], C: [0, 2000], D: C right 2000, F: [1.2, 0]}', "loads": '[3 N at D towards F]'},
     'p.yaml:1:66: warning: points > F: point "F" is more than 500 times as near the origin as the others\n  hint: are metres and millimetres mixed?'),
    (FRAME, {"loads": '[3 N at D at 400 deg]'},
     'p.yaml:5:21: error: loads > 1: an angle from -360 to 360 degrees was wanted'),
    (FRAME, {"loads": '[3 N at D right 3 left 4]'},
     'p.yaml:5:26: error: loads > 1: "right" and "left" make no slope'),
    (FRAME, {"loads": "['(3 right, 4 right) N at D']"},
     'p.yaml:5:22: error: loads > 1: "right" and "right" make no slope'),
    (FRAME, {"loads": '[3 N at D right 3 down 0]'},
     'p.yaml:5:31: error: loads > 1: a leg of a slope must be greater than zero'),
    (FRAME, {"loads": "['(3 right, -4 up) N at D']"},
     'p.yaml:5:20: error: loads > 1: a leg of a slope must be greater than zero'),
    (FRAME, {"route": '[forces along towards D on arm]'},
     'p.yaml:7:30: error: route > 1: "towards" needs a point to start from'),
    (BOW, {"loads": '[3 N at B along bow]'},
     'p.yaml:4:24: error: loads > 1: member "bow" is bent and has no one direction\n  hint: name two points instead: along B D'),
    (FRAME, {"loads": '[3 N at D square to arm]'},
     'p.yaml:5:28: error: loads > 1: two directions are square to it\n  hint: say the side it points to: square to arm, up'),
    (FRAME, {"loads": "['3 N at D square to arm, right']"},
     'p.yaml:5:29: error: loads > 1: "right" does not tell the two directions apart\n  hint: say the side it points to: square to arm, up'),
    (FRAME, {"loads": '[3 N at D on arn down]'},
     'p.yaml:5:21: error: loads > 1: member "arn" is not known\n  hint: nearest known is "arm"'),
    (FRAME, {"loads": '[3 N at D on BD down]'},
     'p.yaml:5:21: error: loads > 1: "BD" is a link, wanted a member'),
    (FRAME, {"members": '{post: O B C, arm: C D, peg: O}'},
     'p.yaml:2:39: error: members > peg: member "peg" has one point, needs two'),
    (FRAME, {"members": "{post: 'O B, C D', arm: C D}"},
     'p.yaml:2:23: error: members > post: point "C" is not on "post" so far'),
    (FRAME, {"members": '{post: O B B C, arm: C D}'},
     'p.yaml:2:21: error: members > post: "B" and "B" are on one spot'),
    (FRAME, {"links": '[B-B]'},
     'p.yaml:3:11: error: links > 1: "B" and "B" are on one spot'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, F: [5, 0], G: [6, 0]}', "members": '{post: O B C, arm: C D, bar: F G}'},
     'p.yaml:2:34: warning: members > bar: member "bar" is joined to nothing'),
    (FRAME, {"members": '{post: O C, arm: C D, bar: B D}', "links": None},
     'p.yaml:2:11: warning: members > post: member "post" passes over point "B" without being joined there\n  hint: add "B" to its points if it is joined there'),
    (FRAME, {"links": '[BX]'},
     'p.yaml:3:9: error: links > 1: "BX" cannot be read as the two ends of a link\n  hint: write it with a dash: B-D'),
    (FRAME, {"links": '[B-D, O-B]'},
     'p.yaml:3:14: warning: links > 2: both ends of link "OB" are on "post"'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, F: [5, 0]}', "links": '[B-D, D-F]'},
     'p.yaml:3:14: warning: links > DF: nothing holds link "DF" at "F"\n  hint: where it ends in the ground, add a pin under supports'),
    (FRAME, {"pins": '{B: not joined}'},
     'p.yaml:4:8: error: pins > B: fewer than two members share point "B"'),
    (FRAME, {"pins": '{C: arm welded to arm}'},
     'p.yaml:4:11: error: pins > C: "arm" cannot be welded to itself'),
    (FRAME, {"pins": '{C: not joined}', "loads": '[3 N at C down]'},
     'p.yaml:6:16: error: loads > 1: it matters which of "post" or "arm" is meant at "C"\n  hint: add "on" and the member'),
    (FRAME, {"loads": '[3 N m clockwise at C]'},
     'p.yaml:5:28: error: loads > 1: it matters which of "post" or "arm" is meant at "C"\n  hint: add "on" and the member'),
    (FRAME, {"loads": '[3 N at O on arm down]'},
     'p.yaml:5:21: error: loads > 1: member "arm" does not pass through "O"'),
    (FRAME, {"supports": '{O: fixd}'},
     'p.yaml:4:15: error: supports > O: "fixd" is no support, wanted "contact", "fixed", "guide", "pin" or "roller"\n  hint: nearest known is "fixed"'),
    (FRAME, {"supports": '{O: fixed pushes up}'},
     'p.yaml:4:15: error: supports > O: "fixed" has no direction'),
    (FRAME, {"supports": '{O: guide pushes up}'},
     'p.yaml:4:15: error: supports > O: "guide" is not said that way\n  hint: a guide goes along a direction; a roller or a contact pushes, or stands on a slope'),
    (FRAME, {"supports": '{O: roller along right}'},
     'p.yaml:4:15: error: supports > O: "roller" is not said that way\n  hint: a guide goes along a direction; a roller or a contact pushes, or stands on a slope'),
    (FRAME, {"supports": '{O: contact}'},
     'p.yaml:4:15: error: supports > O: "contact" needs the way it pushes\n  hint: for example: contact pushes up'),
    (FRAME, {"supports": '{O: roller on slope at 90 deg}'},
     'p.yaml:4:15: error: supports > O: an upright surface has no upper side\n  hint: say the way it pushes: roller pushes right'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, F: [5, 0]}', "supports": '{O: fixed, F: pin}'},
     'p.yaml:4:25: error: supports > F: there is nothing at "F" to hold'),
    (FRAME, {"loads": '[3 N down]'},
     'p.yaml:5:9: error: loads > 1: the point it acts at is missing\n  hint: for example: at E'),
    (FRAME, {"loads": '[3 N at D]'},
     'p.yaml:5:9: error: loads > 1: the direction is missing\n  hint: for example: down, right 3 down 4, at 30 deg'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, F: [5, 0]}', "loads": '[3 N at F down]'},
     'p.yaml:5:16: error: loads > 1: no member or link has a point "F"\n  hint: add "F" to the points of the member it lies on'),
    (FRAME, {"loads": '[3 N at C on arm and post down]'},
     'p.yaml:5:29: error: loads > 1: one member was wanted'),
    (FRAME, {"loads": "['(3 right, 4 up) N at D down']"},
     'p.yaml:5:10: error: loads > 1: the direction is given twice'),
    (FRAME, {"loads": '[3 N at D down from C to D]'},
     'p.yaml:5:28: error: loads > 1: a force acts at one point'),
    (FRAME, {"loads": '[3 N at D clockwise]'},
     'p.yaml:5:18: error: loads > 1: "clockwise" is said of a couple, and this is none'),
    (FRAME, {"loads": '[3 N m on arm]'},
     'p.yaml:5:9: error: loads > 1: the sense of the couple is missing\n  hint: add clockwise or anticlockwise'),
    (FRAME, {"loads": '[3 N m clockwise on arm down]'},
     'p.yaml:5:9: error: loads > 1: a couple has a sense, but no direction or length'),
    (FRAME, {"loads": '[3 N m clockwise]'},
     'p.yaml:5:9: error: loads > 1: the member it acts on is missing\n  hint: for example: on arm'),
    (FRAME, {"loads": '[weight of arm 3 kg up]'},
     'p.yaml:5:23: error: loads > 1: a weight acts down at one point'),
    (BOW, {"loads": '[weight of bow 3 kg]'},
     'p.yaml:4:19: error: loads > 1: member "bow" is bent and its middle is not clear\n  hint: give the point it acts at: weight of arm 20 kg at D'),
    (FRAME, {"loads": '[3 N/m down on arm at D]'},
     'p.yaml:5:30: error: loads > 1: a spread load acts along a member\n  hint: for example: on arm from C to E'),
    (FRAME, {"loads": '[3 N/m down]'},
     'p.yaml:5:9: error: loads > 1: the member it lies on is missing\n  hint: for example: on arm, or from C to E'),
    (FRAME, {"loads": '[3 N/m down on arm and post]'},
     'p.yaml:5:31: error: loads > 1: over several members, both ends are wanted\n  hint: for example: on arm, or from C to E'),
    (FRAME, {"loads": '[3 N/m down from O to D]'},
     'p.yaml:5:30: error: loads > 1: no member goes all the way from "O" to "D"\n  hint: add "on" and the members that carry it'),
    (THREE, {"members": '{ab: A B, bc: B C, bd: B D, ac: A B C}', "loads": '[3 N/m down from A to C]'},
     'p.yaml:4:25: error: loads > 1: more than one member goes from "A" to "C"\n  hint: add "on" and the members that carry it'),
    (FRAME, {"loads": '[3 N/m down on post per horizontal length]'},
     'p.yaml:5:9: error: loads > 1: measured that way, the load has no length'),
    (FRAME, {"find": None},
     'p.yaml:5:1: warning: find: nothing is asked\n  hint: everything will be found'),
    (FRAME, {"find": '[Q]'},
     'p.yaml:6:8: error: find > 1: "Q" is not known\n  hint: it could be "O", "B", "C", "D", "BD", "post" or "arm"'),
    (FRAME, {"find": '[arm]'},
     'p.yaml:6:8: error: find > 1: more than one force acts on member "arm"\n  hint: ask for the force at a point, on it: C on arm'),
    (THREE, {"find": '[B]'},
     'p.yaml:5:8: error: find > 1: the force at "B" differs from part to part\n  hint: on which part? write C on arm'),
    (FRAME, {"points": '{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2, F: C right 1}', "members": '{post: O B C, arm: C F D}', "find": '[F]'},
     'p.yaml:6:8: error: find > 1: no force between parts acts at "F"'),
    (FRAME, {"find": '[reaction at C]'},
     'p.yaml:6:20: error: find > 1: there is no support at "C"'),
    (THREE, {"supports": '{A: pin, C: fixed, D: fixed}', "find": '[A couple]'},
     'p.yaml:5:8: error: find > 1: the support at "A" has no couple'),
    (FRAME, {"find": '[O-B]'},
     'p.yaml:6:8: error: find > 1: there is no link from "O" to "B"'),
    (FRAME, {"find": '[B-D x]'},
     'p.yaml:6:8: error: find > 1: the force in "BD" has one value along it'),
    (FRAME, {"route": '[moments about O on whole and arm]'},
     'p.yaml:7:38: error: route > 1: the whole has every part already'),
    (FRAME, {"route": '[moments about O on BD]'},
     'p.yaml:7:28: error: route > 1: a sum needs a member, a pin or the whole'),
]


def with_fault(base: dict, sections: dict) -> str:
    merged = {k: v for k, v in {**base, **sections}.items() if v is not None}
    order = sorted(merged, key=lambda k: SECTIONS.index(k) if k in SECTIONS else len(SECTIONS))
    return "".join(f"{k}: {merged[k]}\n" for k in order)


def told(text: str) -> str:
    return "\n".join(render(d) for d in read_text(text, "p.yaml").diagnostics)


@pytest.mark.parametrize(("base", "sections", "message"), FAULTS)
def test_a_planted_fault_gets_its_message_and_no_other(base, sections, message):
    assert told(with_fault(base, sections)) == message


@pytest.mark.parametrize("base", [FRAME, THREE, BOW])
def test_without_the_fault_there_is_nothing_to_say(base):
    assert told(with_fault(base, {})) == ""


WHOLE = [
    ("# nothing\n", "p.yaml:1:1: error: the file is empty\n  hint: a file has points, members, supports, loads and find"),
    ("- a\n- b\n", "p.yaml:1:1: error: found no sections\n  hint: a file has points, members, supports, loads and find"),
    ("title: a\n", 'p.yaml:1:1: error: the section "points" is missing\n  hint: a file has points, members, supports, loads and find\n'
                   'p.yaml:1:1: error: there are neither "members" nor "links"\n  hint: a file has points, members, supports, loads and find'),
    (with_fault(FRAME, {"title": "a" * 20001}), "p.yaml:1:8: error: title: a text of more than 20000 characters"),
    (with_fault(FRAME, {"loads": "[" + "3 N at D down, " * 101 + "]"}), "p.yaml:5:1: error: loads: more than 100 entries in one section"),
    ("route: [" + "a," * 20001 + "]", "p.yaml:1:1: error: more than 20000 entries"),
    ("a" * 300_000, "error: the file is larger than 256 KB"),
]


@pytest.mark.parametrize(("text", "message"), WHOLE)
def test_a_file_that_is_no_problem_says_so(text, message):
    assert told(text).startswith(message)


def test_a_file_that_cannot_be_read_says_so(tmp_path: Path):
    missing, folder, latin = tmp_path / "none.yaml", tmp_path, tmp_path / "latin.yaml"
    latin.write_bytes("title: Br\u00fccke\n".encode("latin-1"))

    said = [render(read_file(p).diagnostics[0]).replace(str(p), "FILE") for p in (missing, folder, latin)]

    assert said == ["error: FILE is not there", "error: FILE cannot be opened",
                    "FILE:1:10: error: byte FC is not UTF-8 text\n  hint: save the file as UTF-8"]


def test_all_faults_are_told_at_once_in_file_order():
    text = with_fault(FRAME, {"units": "m, kn", "points": "{O: [0, 0], B: [0, 1], C: [0, 2], D: C rihgt 2}", "supports": "{O: fixd}"})
    places = [(d.place.line, d.code) for d in read_text(text).diagnostics]
    assert places == [(1, "read.unknown_unit"), (2, "read.phrase"), (5, "read.unknown_support")]


def test_what_follows_from_a_fault_is_not_told_again():
    # D is named by a member, a link, a load and a question.
    text = with_fault(FRAME, {"points": "{O: [0, 0], B: [0, 1], C: [0, 2], D: C rihgt 2}", "find": "[D, D on arm, B-D]"})
    assert [d.code for d in read_text(text).diagnostics] == ["read.phrase"]


def test_a_broken_section_leaves_the_others_readable():
    text = with_fault(FRAME, {"loads": "[3 N at D down"})
    reading = read_text(text)
    assert [d.code for d in reading.diagnostics] == ["read.skeleton"]
    assert [p.name for p in reading.problem.parts] == ["post", "arm"]
    assert [a.written for a in reading.problem.asked] == ["O"]


def test_every_sentence_of_the_reader_is_taken_by_some_fault():
    texts = [with_fault(b, s) for b, s, _ in FAULTS] + [t for t, _ in WHOLE]
    taken = {d.code for t in texts for d in read_text(t).diagnostics} | {"read.no_file", "read.closed_file", "read.not_utf8"}
    hints = {d.hint for t in texts for d in read_text(t).diagnostics if d.hint} | {"hint.utf8"}
    known = catalogue("diagnostics")
    assert {k for k in known if k.startswith("read.")} == taken
    assert {k for k in known if k.startswith("hint.")} == hints
