using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Findings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>What was measured on a tyre beside what its size says.</summary>
internal static class TyreRelations
{
    public static void Look(RelationBook book, Tyre tyre)
    {
        if (!TyreDesignation.Parse(tyre.Designation, "").Try(out var size))
        {
            return;
        }

        string path = "parts/tyres/" + tyre.Id;
        var marked = new Num(path + "/designation", "size", tyre.Designation, 0);
        var section = Num.Of(path + "/sectionWidth", "section width", tyre.SectionWidth);
        var outer = Num.Of(path + "/outerDiameter", "outer diameter", tyre.OuterDiameter);
        var tread = Num.Of(path + "/treadWidth", "tread width", tyre.TreadWidth);
        double wide = section.Given ? section.Si : size.NominalWidth;
        book.Add(Kinds.TyreWidth, path, section.Si / size.NominalWidth, new(0.75, 0.93, 1.09, 1.3),
            () => $"\"{tyre.Name}\" measures {section.Typed} across; its size says {Say.Mm(size.NominalWidth, 0)}.", section, marked);
        book.Add(Kinds.TyreDiameter, path, outer.Si / size.OuterDiameter, new(0.9, 0.965, 1.02, 1.08),
            () => $"\"{tyre.Name}\" measures {outer.Typed}; its size says {Say.Mm(size.OuterDiameter, 0)}.", outer, marked);
        book.Add(Kinds.TyreTread, path, tread.Si / wide, new(0.4, 0.68, 0.97, 1.15),
            () => $"The tread of \"{tyre.Name}\" is {Say.Percent(tread.Si / wide)} as wide as the tyre; 68 to 97 % are usual.",
            section.Given ? [tread, section] : [tread, marked]);
        var (least, greatest) = size.PermittedRimCodes;
        Rim(book, tyre, marked, Num.Of(path + "/rimMin", "narrowest rim allowed", tyre.RimMin), RimCodes.Width(least));
        Rim(book, tyre, marked, Num.Of(path + "/rimMax", "widest rim allowed", tyre.RimMax), RimCodes.Width(greatest));
    }

    private static void Rim(RelationBook book, Tyre tyre, Num marked, Num given, double usual) =>
        book.Add(Kinds.TyreRims, given.Path, given.Si - usual, new(-0.08, -0.0260, 0.0260, 0.08),
            () => $"{given.Label} of \"{tyre.Name}\" is {given.Typed}; its size usually has "
                + FormattableString.Invariant($"{usual / 0.0254:0.#} in."),
            given, marked);
}
