using Cornerwright.Garage.Parts;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>Bores of springs and the registers that enter them, through the stack of one corner.</summary>
internal static class SeatRelations
{
    public static void Look(RelationBook book, string at, Fitted.CornerParts parts)
    {
        var stack = parts.Stack;
        for (int i = 0; i < stack.Count; i++)
        {
            if (stack[i] is Sheet sheet)
            {
                string path = "parts/sheets/" + sheet.Id;
                Beside(book, at, i > 0 ? stack[i - 1] : null, Num.Of(path + "/lowerRegister", $"register below of {sheet.Name}",
                    sheet.LowerRegister));
                Beside(book, at, i + 1 < stack.Count ? stack[i + 1] : null,
                    Num.Of(path + "/upperRegister", $"register above of {sheet.Name}", sheet.UpperRegister));
            }
        }

        if (stack.Count == 0)
        {
            return;
        }

        if (parts.Perch is { } perch)
        {
            Beside(book, at, stack[0], Num.Of($"parts/perches/{perch.Id}/register", $"register of {perch.Name}", perch.Register));
            if (stack[0] is Spring spring)
            {
                var outer = Num.Of($"parts/springs/{spring.Id}/outerDiameter", $"outer diameter of {spring.Name}", spring.OuterDiameter);
                var wide = Num.Of($"parts/perches/{perch.Id}/outerDiameter", $"outer diameter of {perch.Name}", perch.OuterDiameter);
                book.Add(Kinds.SpringSeat, $"{at}/{perch.Id}-{spring.Id}-outer", wide.Si - outer.Si, new(-0.06, -0.006, 0.022, 0.12),
                    () => $"{wide.Label} is {wide.Typed}, {outer.Label} {outer.Typed}.", wide, outer);
            }
        }

        if (parts.TopMount is { } mount)
        {
            Beside(book, at, stack[^1], Num.Of($"parts/topMounts/{mount.Id}/register", $"upper register of {mount.Name}", mount.Register));
        }

        if (parts.Damper is { TubeDiameter: not null } damper && parts.Perch is { Pitch: not null })
        {
            var tube = Num.Of($"parts/dampers/{damper.Id}/tubeDiameter", $"tube of {damper.Name}", damper.TubeDiameter);
            foreach (var spring in stack.OfType<Spring>())
            {
                var bore = Num.Of($"parts/springs/{spring.Id}/innerDiameter", $"inner diameter of {spring.Name}", spring.InnerDiameter);
                book.Add(Kinds.SpringSeat, $"{at}/{damper.Id}-{spring.Id}", bore.Si - tube.Si, new(-0.08, -0.045, 0.06, 0.16),
                    () => $"{bore.Label} is {bore.Typed}, {tube.Label} {tube.Typed}.", bore, tube);
            }
        }
    }

    private static void Beside(RelationBook book, string at, Part? piece, Num register)
    {
        if (piece is Spring spring)
        {
            var bore = Num.Of($"parts/springs/{spring.Id}/innerDiameter", $"inner diameter of {spring.Name}", spring.InnerDiameter);
            book.Add(Kinds.SpringSeat, $"{at}/{register.Path.Split('/')[2]}-{spring.Id}", bore.Si - register.Si, new(-0.04, -0.006,
                0.012, 0.06),
                () => $"{bore.Label} is {bore.Typed}, {register.Label} {register.Typed}.", bore, register);
        }
    }
}
