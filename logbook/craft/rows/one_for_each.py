"""Two repeats that are one: ``sc in each dc around, 3 sc in each ch-2 sp`` works into whichever comes next."""

from dataclasses import replace

from logbook.craft.rows.instructions import ANY_STITCH, Either, Instruction, Next, Repeat, Span, Times, ToEnd, Work, works_of


def one_for_each(items: list[Instruction], new: list[Instruction], by_and: bool) -> bool:
    """``sc in each dc around, 3 sc in each ch-2 sp``: made one repeat, whichever comes next; False if they are no such two."""
    if not (items and len(new) == 1):
        return False
    first, second = items[-1], new[0]
    if by_and and isinstance(second, Work) and second.into == Next(getattr(second.into, "wanted", ANY_STITCH)):
        second = Repeat((second,), ToEnd(), second.span)
    if not (isinstance(first, Repeat) and isinstance(second, Repeat) and isinstance(first.until, ToEnd)):
        return False
    works = [each for work in (*works_of(first.body), *works_of(second.body)) for each in by_kind(work)]
    single = (
        len(first.body) == 1
        and len(second.body) == 1
        and not any(isinstance(item, Repeat) for item in (*first.body, *second.body))
    )
    wanted = [work.into.wanted for work in works if isinstance(work.into, Next) and not work.together]
    if not single or len(wanted) != len(works) or wanted[-1].kind != "sp" or wanted[-1] in wanted[:-1]:
        return False
    span = Span(first.span.start, second.span.end)
    body = (Either(tuple(works), span),)
    items[-1] = replace(first, body=body, until=second.until if not isinstance(second.until, Times) else first.until, span=span)
    return True


def by_kind(work: Work) -> list[Work]:
    """``sc in each dc and each ch-1 sp`` as one work for each kind of place."""
    if isinstance(work.into, Next) and work.into.wanted.kind == "either":
        return [replace(work, into=Next(each)) for each in work.into.wanted.either]
    return [work]
