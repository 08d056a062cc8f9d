"""How the program rounds, as formulas of a spreadsheet; what is given to each is a formula too."""

from logbook.craft.pieces.options import Choose


def nearest(of: str) -> str:
    """To the nearest whole number, halves away from nought."""
    return f"ROUND(ROUND({of},9),0)"


def halves_up(of: str) -> str:
    """To the nearest whole number, halves up, below nought too."""
    return f"INT(ROUND({of},9)+0.5)"


def halves_down(of: str) -> str:
    """To the nearest whole number from 1 on, halves down."""
    return f"MAX(1,ROUNDUP(ROUND({of}-0.5,9),0))"


def halves_even(of: str) -> str:
    """To the nearest whole number, a half to the even one."""
    return f"IF(ROUND(ABS(({of})-INT({of})-0.5),9)=0,2*ROUND(({of})/2,0),ROUND({of},0))"


def like(of: str, count: str) -> str:
    """The count nearest to ``of`` that is odd or even as another is."""
    return f"MOD({count},2)+2*{nearest(f'(({of})-MOD({count},2))/2')}"


def in_steps(exact: str, least: str, step: str, choose: Choose) -> str:
    """The count in steps from the least one that is nearest to ``exact``, or at least or at most as much."""
    steps = f"({exact}-{least})/{step}"
    rounded = {
        Choose.AT_LEAST: f"ROUNDUP(ROUND({steps},9),0)",
        Choose.AT_MOST: f"ROUNDDOWN(ROUND({steps},9),0)",
        Choose.NEAREST: f"ROUNDUP(ROUND({steps}-0.5,9),0)",
    }[choose]
    return f"({least}+{step}*MAX(0,{rounded}))"


def better(exact: str, whole: str, half: str, choose: Choose) -> str:
    """Of the best whole and the best half repeats the better."""
    narrow, wide = f"MIN({whole},{half})", f"MAX({whole},{half})"
    if choose is Choose.AT_LEAST:
        return narrow
    if choose is Choose.AT_MOST:
        return f"IF({wide}<={exact}+0.000000001,{wide},{narrow})"
    return f"IF(ROUND(ABS({wide}-{exact})-ABS({narrow}-{exact}),9)<0,{wide},{narrow})"
