namespace Cornerwright.Web.Components.Entry;

/// <summary>
/// Changes one thing: from what it is when the change is made, not when the page was drawn, so that two quick
/// entries never undo each other.
/// </summary>
/// <param name="words">What is changed, in words: "front left corner / camber now".</param>
/// <param name="rework">From the old value to the new.</param>
public delegate void Mend(string words, Func<object?, object?> rework);
