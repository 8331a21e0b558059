namespace Cornerwright.Workshop.Ranking;

/// <summary>What a choice is weighed by, as people read it: less is better in every one.</summary>
/// <param name="Cost">Still to be paid.</param>
/// <param name="Doubt">100 less the whole per cent of certainty that everything holds; 0 above 99 %.</param>
/// <param name="HeightMissMm">Whole millimetres.</param>
/// <param name="Stiffness">Ride frequency in steps of 0.05 Hz, its sign turned where stiff is wanted; 0 where it is not known.</param>
internal readonly record struct Weighed(decimal Cost, int Doubt, int HeightMissMm, int Stiffness)
{
    /// <summary>At least as good in everything.</summary>
    public bool Covers(in Weighed other) =>
        Cost <= other.Cost && Doubt <= other.Doubt && HeightMissMm <= other.HeightMissMm && Stiffness <= other.Stiffness;
}

/// <summary>The choices that no other one beats in everything: cost, certainty, height and stiffness.</summary>
internal sealed class ParetoFront
{
    private readonly List<HeldChoice> _members = [];

    public IReadOnlyList<HeldChoice> Members => _members;

    /// <summary>True if a member is at least as good in everything: such a choice adds nothing.</summary>
    public bool Covers(in Weighed weighed)
    {
        foreach (var member in _members)
        {
            if (member.Weighed.Covers(weighed))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Takes a choice in; of equals the better ranked stays.</summary>
    public void Add(HeldChoice choice)
    {
        var weighed = choice.Weighed;
        int equal = _members.FindIndex(m => m.Weighed == weighed);
        if (equal >= 0)
        {
            _members[equal] = choice.Key.CompareTo(_members[equal].Key) < 0 ? choice : _members[equal];
            return;
        }

        if (!Covers(weighed))
        {
            _members.RemoveAll(m => weighed.Covers(m.Weighed));
            _members.Add(choice);
        }
    }
}
