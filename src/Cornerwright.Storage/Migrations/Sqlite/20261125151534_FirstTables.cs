using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Cornerwright.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class FirstTables : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Cars",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Head = table.Column<int>(type: "INTEGER", nullable: false),
                    BinnedAt = table.Column<DateTimeOffset>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Cars", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Documents",
                columns: table => new
                {
                    Hash = table.Column<string>(type: "TEXT", nullable: false),
                    Gzip = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Documents", x => x.Hash);
                });

            migrationBuilder.CreateTable(
                name: "Revisions",
                columns: table => new
                {
                    CarId = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Fold = table.Column<int>(type: "INTEGER", nullable: false),
                    Parent = table.Column<int>(type: "INTEGER", nullable: true),
                    OpenedAt = table.Column<DateTimeOffset>(type: "TEXT", nullable: false),
                    SavedAt = table.Column<DateTimeOffset>(type: "TEXT", nullable: false),
                    Changes = table.Column<string>(type: "TEXT", nullable: false),
                    Label = table.Column<string>(type: "TEXT", nullable: true),
                    Session = table.Column<string>(type: "TEXT", nullable: true),
                    Open = table.Column<bool>(type: "INTEGER", nullable: false),
                    DocumentHash = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Revisions", x => new { x.CarId, x.Number });
                    table.ForeignKey(
                        name: "FK_Revisions_Cars_CarId",
                        column: x => x.CarId,
                        principalTable: "Cars",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Revisions_Documents_DocumentHash",
                        column: x => x.DocumentHash,
                        principalTable: "Documents",
                        principalColumn: "Hash",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ChangedBuilds",
                columns: table => new
                {
                    CarId = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    BuildId = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ChangedBuilds", x => new { x.CarId, x.BuildId, x.Number });
                    table.ForeignKey(
                        name: "FK_ChangedBuilds_Revisions_CarId_Number",
                        columns: x => new { x.CarId, x.Number },
                        principalTable: "Revisions",
                        principalColumns: new[] { "CarId", "Number" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ChangedBuilds_CarId_Number",
                table: "ChangedBuilds",
                columns: new[] { "CarId", "Number" });

            migrationBuilder.CreateIndex(
                name: "IX_Revisions_DocumentHash",
                table: "Revisions",
                column: "DocumentHash");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ChangedBuilds");

            migrationBuilder.DropTable(
                name: "Revisions");

            migrationBuilder.DropTable(
                name: "Cars");

            migrationBuilder.DropTable(
                name: "Documents");
        }
    }
}
