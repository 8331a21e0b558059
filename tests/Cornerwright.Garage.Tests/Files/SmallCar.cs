namespace Cornerwright.Garage.Tests.Files;

/// <summary>A short document in the form the writer gives it; invented.</summary>
public static class SmallCar
{
    public const string Text = """
        {
          "format": "cornerwright-car",
          "version": 1,
          "id": "dune",
          "name": "Dune",
          "wheelbase": { "value": "2480 mm", "tolerance": "5 mm", "spread": "halfRange", "source": "tape", "date": "2026-05-01" },
          "loadCases": [
            {
              "id": "kerb",
              "name": "Kerb",
              "frontLeft": { "value": "395 kg", "source": "scale" }
            }
          ],
          "measuredLoadCase": "kerb",
          "measuredBuild": "street",
          "front": {
            "layout": "coilover",
            "kind": "independent",
            "steered": true,
            "hub": {
              "bolts": 5,
              "boltCircle": { "value": "112 mm", "source": "calliper" }
            }
          },
          "parts": {
            "wheels": [
              {
                "id": "w18",
                "name": "Eighteens",
                "price": 240.50,
                "designation": "8Jx18 ET35 5x112"
              }
            ],
            "springs": [
              {
                "id": "s60",
                "name": "Sixty",
                "role": "main",
                "rate": { "value": "60 N/mm", "tolerance": "2 N/mm", "source": "dataSheet" },
                "curve": [
                  {
                    "deflection": "10 mm",
                    "force": "600 N"
                  }
                ],
                "ends": "closedAndGround"
              }
            ]
          },
          "builds": [
            {
              "id": "street",
              "name": "Street",
              "frontLeft": {
                "wheel": "w18",
                "stack": ["s60"],
                "perchHeight": "312 mm"
              }
            }
          ]
        }

        """;
}
